import { type FormEvent, useRef, useState } from 'react'
import { useAction } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { SignedBy } from '../../parts/decisions/SignedBy.tsx'
import { useSigner } from '../../parts/decisions/signer.ts'
import { go } from '../../parts/routing/useRoute.ts'
import { hashOf } from '../../routes/route.ts'
import { focusFirstWrong } from '../../widgets/firstWrong.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { SpecimenFieldset } from './SpecimenFieldset.tsx'
import { emptyTexts, type FormErrors, readSpecimen } from './specimenForm.ts'

/** Adds specimens one after another; what a batch has in common stays for the next. */
export function NewSpecimenPage() {
  const quantities = useQuantities()
  const signer = useSigner()
  const [texts, setTexts] = useState(emptyTexts)
  const [errors, setErrors] = useState<FormErrors>({})
  const [added, setAdded] = useState<string | null>(null)
  const add = useAction('specimens.add')
  const form = useRef<HTMLFormElement>(null)

  async function submit(event: FormEvent, again: boolean): Promise<void> {
    event.preventDefault()
    const read = readSpecimen(texts, quantities, false)
    setErrors(read.errors ?? {})
    if (read.fields === null) {
      focusFirstWrong(form.current)
      return
    }
    const specimen = await add.run({ fields: read.fields, by: signer })
    if (specimen === null) return
    if (!again) return go({ page: 'specimen', specimenId: specimen.specimenId })
    setAdded(specimen.fields.number)
    setTexts({ ...texts, number: '', notes: '' })
    form.current?.querySelector<HTMLInputElement>('input')?.focus()
  }

  return (
    <div className="form-page">
      <p className="crumb">
        <a href={hashOf({ page: 'specimens' })}>Specimens</a>
      </p>
      <h1>Add a specimen</h1>
      <form className="form" ref={form} noValidate onSubmit={(event) => void submit(event, false)}>
        <SpecimenFieldset texts={texts} errors={errors} onTexts={setTexts} />
        <Notice trouble={add.error} onDismiss={add.dismiss} />
        <div className="form-buttons">
          <button type="submit" className="button button-primary" disabled={add.pending}>
            Add
          </button>
          <button type="button" className="button" disabled={add.pending} onClick={(event) => void submit(event, true)}>
            Add, and another like it
          </button>
          <a className="button button-quiet" href={hashOf({ page: 'specimens' })}>
            Cancel
          </a>
          <SignedBy />
          <p aria-live="polite">{added === null ? '' : `${added} added.`}</p>
        </div>
      </form>
    </div>
  )
}
