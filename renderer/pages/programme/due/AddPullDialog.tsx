import { useState } from 'react'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { type AddedPullTexts, readAddedPull } from './addedPull.ts'

/** A pull that the plan did not have: its age, its day, and how many spares of each series it takes. */
export function AddPullDialog({
  studyId,
  pulls,
  onClose,
}: {
  studyId: number
  pulls: readonly PullSummary[]
  onClose(): void
}) {
  const decide = useAction('pulls.decide')
  const days = [...new Set(pulls.map(({ gluedOn }) => gluedOn))]
  const [texts, setTexts] = useState<AddedPullTexts>({ gluedOn: days[0] ?? '', age: '', dueOn: '', spares: '' })
  const [asked, setAsked] = useState(false)
  const { pull, errors } = readAddedPull(texts)
  const bind = (key: keyof AddedPullTexts) => ({
    value: texts[key],
    onChange: (event: { currentTarget: { value: string } }) => setTexts({ ...texts, [key]: event.currentTarget.value }),
  })
  return (
    <SignatureDialog
      title="Add a pull"
      explains="It takes spares; nothing that is planned changes."
      button="Add"
      pending={decide.pending}
      error={decide.error}
      onSign={async (signature) => {
        setAsked(true)
        if (signature === null || pull === null) return false
        return (await decide.run({ studyId, kind: 'added', ...pull, ...signature })) !== null
      }}
      onClose={onClose}
    >
      {days.length < 2 ? null : (
        <SelectField label="Glued on" {...bind('gluedOn')}>
          {days.map((day) => (
            <option key={day} value={day ?? ''}>
              {day === null ? 'not glued yet' : calendarDayWords(day)}
            </option>
          ))}
        </SelectField>
      )}
      <Field
        label="Age"
        unit="months"
        inputMode="numeric"
        required
        data-first-focus=""
        {...bind('age')}
        error={asked ? errors?.age : null}
      />
      <Field
        label="Day"
        type="date"
        hint="Without one, the day on which the blocks are of that age."
        {...bind('dueOn')}
      />
      <Field
        label="Spares of each series"
        inputMode="numeric"
        required
        {...bind('spares')}
        error={asked ? errors?.spares : null}
      />
    </SignatureDialog>
  )
}
