import { type FormEvent, useState } from 'react'
import type { Specimen } from '#contract/specimens/specimen.ts'
import { usePreferences } from '../../host/hostContext.ts'
import { useAction } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Field } from '../../widgets/Field.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import { SpecimenFieldset } from './SpecimenFieldset.tsx'
import { type FormErrors, readSpecimen, textsOf } from './specimenForm.ts'
import './specimens.css'

/** Corrects a specimen: the fields before stay in its history, with who changed them and why. */
export function CorrectionDialog({ specimen, onClose }: { specimen: Specimen; onClose(): void }) {
  const quantities = useQuantities()
  const { operator } = usePreferences()
  const [texts, setTexts] = useState(() => textsOf(specimen.fields, quantities))
  const [errors, setErrors] = useState<FormErrors>({})
  const [by, setBy] = useState(operator)
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)
  const correct = useAction('specimens.correct')

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    const read = readSpecimen(texts, quantities, specimen.fields.demo)
    setErrors(read.errors ?? {})
    if (read.fields === null || by.trim() === '' || reason.trim() === '') return
    const input = { specimenId: specimen.specimenId, fields: read.fields, by: by.trim(), reason: reason.trim() }
    if ((await correct.run(input)) !== null) onClose()
  }

  return (
    <Dialog title={`Correct ${specimen.fields.number}`} onClose={onClose} width="wide">
      <form className="form" noValidate onSubmit={(event) => void submit(event)}>
        <SpecimenFieldset texts={texts} errors={errors} onTexts={setTexts} />
        <div className="signature-fields">
          <Field
            label="Why the correction"
            required
            value={reason}
            maxLength={1000}
            onChange={(event) => setReason(event.currentTarget.value)}
            error={asked && reason.trim() === '' ? 'Say why; the version before stays beside it.' : null}
          />
          <Field
            label="Who"
            required
            value={by}
            maxLength={200}
            onChange={(event) => setBy(event.currentTarget.value)}
            error={asked && by.trim() === '' ? 'Enter your name or initials.' : null}
          />
        </div>
        <Notice trouble={correct.error} onDismiss={correct.dismiss} />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Cancel
          </button>
          <button type="submit" className="button button-primary" disabled={correct.pending}>
            Record the correction
          </button>
        </div>
      </form>
    </Dialog>
  )
}
