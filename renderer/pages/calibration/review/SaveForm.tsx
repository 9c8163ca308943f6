import { useState } from 'react'
import type { AssessmentChoices } from '#contract/calibration/calibrationRoutine.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { rememberSigner, useSigner } from '../../../parts/decisions/signer.ts'
import type { UnitFields } from '../../../parts/forms/typedTexts.ts'
import { untouched, useTypedTexts } from '../../../parts/forms/useTypedTexts.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { Field, TextField } from '../../../widgets/Field.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { proposedDueDate, proposedName, readTemperature } from './reviewForm.ts'

const temperatureUnit: UnitFields<'temperature'> = { temperature: ({ temperature }) => temperature }

/** Keeps the calibration under a name. It is in force only after a word of its own on its page. */
export function SaveForm({ choices, ready }: { choices: AssessmentChoices; ready: boolean }) {
  const save = useAction('calibration.save')
  const [name, setName] = useState(() => proposedName(new Date()))
  const [by, setBy] = useState(useSigner())
  const [dueOn, setDueOn] = useState(() => proposedDueDate(new Date()))
  const { temperature } = useQuantities()
  const texts = useTypedTexts(() => untouched({ temperature: '' }), temperatureUnit)
  const [note, setNote] = useState('')
  const [asked, setAsked] = useState(false)
  const end = readTemperature(texts.readable.temperature, temperature)

  async function submit(): Promise<boolean> {
    setAsked(true)
    if (!ready || name.trim() === '' || 'error' in end) return false
    rememberSigner(by)
    const kept = await save.run({
      choices,
      name: name.trim(),
      by: by.trim(),
      dueOn: dueOn === '' ? null : dueOn,
      note: note.trim(),
      temperatureEndC: end.temperatureC,
    })
    if (kept !== null) go({ page: 'calibration-record', calibrationId: kept.calibrationId })
    return kept !== null
  }

  return (
    <Form className="form save-form" focusFirst={false} onSubmit={submit}>
      <h2>Save the calibration</h2>
      <Field
        label="Name"
        required
        maxLength={200}
        value={name}
        error={asked && name.trim() === '' ? 'Give it a name; every break shows it.' : null}
        onChange={(event) => setName(event.currentTarget.value)}
      />
      <div className="field-pair">
        <Field
          label="Recalibration due"
          type="date"
          value={dueOn}
          onChange={(event) => setDueOn(event.currentTarget.value)}
        />
        <Field
          label="Temperature now"
          unit={temperature.unit}
          value={texts.shown.temperature}
          error={'error' in end ? end.error : null}
          onChange={(event) => texts.onTexts({ temperature: event.currentTarget.value })}
        />
      </div>
      <Field
        label="Name or initials"
        value={by}
        maxLength={200}
        onChange={(event) => setBy(event.currentTarget.value)}
      />
      <TextField label="Note" value={note} maxLength={4000} onChange={(event) => setNote(event.currentTarget.value)} />
      <Notice trouble={save.error} />
      <button type="submit" className="button button-primary button-large" aria-disabled={!ready || save.pending}>
        Save{' '}
      </button>
      <p className="quiet">
        A saved calibration is never changed; a newer one replaces it. Put it in force on its own page.
      </p>
    </Form>
  )
}
