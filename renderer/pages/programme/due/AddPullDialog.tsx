import { useState } from 'react'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { Field, SelectField } from '../../../widgets/Field.tsx'

const wholeNumber = (text: string, least: number) => {
  const number = Number(text.trim())
  return text.trim() !== '' && Number.isInteger(number) && number >= least ? number : null
}

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
  const [gluedOn, setGluedOn] = useState(days[0] ?? null)
  const [age, setAge] = useState('')
  const [dueOn, setDueOn] = useState('')
  const [spares, setSpares] = useState('')
  const [asked, setAsked] = useState(false)
  const ageMonths = wholeNumber(age, 0)
  const blocksPerSeries = wholeNumber(spares, 1)
  return (
    <SignatureDialog
      title="Add a pull"
      explains="It takes spares; nothing that is planned changes."
      button="Add"
      pending={decide.pending}
      error={decide.error}
      onSign={async (signature) => {
        setAsked(true)
        if (signature === null || ageMonths === null || blocksPerSeries === null) return false
        const day = dueOn === '' ? null : dueOn
        const made = { studyId, gluedOn, ageMonths, kind: 'added' as const, dueOn: day, blocksPerSeries }
        return (await decide.run({ ...made, ...signature })) !== null
      }}
      onClose={onClose}
    >
      {days.length < 2 ? null : (
        <SelectField label="Glued on" value={gluedOn ?? ''} onChange={(event) => setGluedOn(event.currentTarget.value)}>
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
        value={age}
        onChange={(event) => setAge(event.currentTarget.value)}
        error={asked && ageMonths === null ? 'Give the age in whole months.' : null}
      />
      <Field
        label="Day"
        type="date"
        hint="Without one, the day on which the blocks are of that age."
        value={dueOn}
        onChange={(event) => setDueOn(event.currentTarget.value)}
      />
      <Field
        label="Spares of each series"
        inputMode="numeric"
        required
        value={spares}
        onChange={(event) => setSpares(event.currentTarget.value)}
        error={asked && blocksPerSeries === null ? 'Give a whole number, 1 or more.' : null}
      />
    </SignatureDialog>
  )
}
