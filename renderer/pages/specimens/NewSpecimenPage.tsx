import { useLayoutEffect, useRef, useState } from 'react'
import { useAction } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { SignedBy } from '../../parts/decisions/SignedBy.tsx'
import { useSigner } from '../../parts/decisions/signer.ts'
import { untouched, useTypedTexts } from '../../parts/forms/useTypedTexts.ts'
import { go } from '../../parts/routing/useRoute.ts'
import { hashOf } from '../../routes/route.ts'
import { Form } from '../../widgets/forms/Form.tsx'
import { focusFirstField } from '../../widgets/forms/focusField.ts'
import { Keys } from '../../widgets/Keys.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import { nextNumber } from './nextNumber.ts'
import { SpecimenFieldset } from './SpecimenFieldset.tsx'
import { emptyTexts, type FormErrors, readSpecimen, specimenUnits, withTaken } from './specimenForm.ts'

/** Adds specimens one after another; what a batch has in common stays for the next. */
export function NewSpecimenPage() {
  const quantities = useQuantities()
  const signer = useSigner()
  const texts = useTypedTexts(() => untouched(emptyTexts), specimenUnits)
  const [errors, setErrors] = useState<FormErrors>({})
  const [added, setAdded] = useState<{ number: string } | null>(null)
  const add = useAction('specimens.add')
  const page = useRef<HTMLDivElement>(null)

  // In the same moment as the page shows the number that is proposed: what is typed next, or scanned, replaces it
  useLayoutEffect(() => {
    if (added !== null && page.current !== null) focusFirstField(page.current, true)
  }, [added])

  async function submit(by: string): Promise<boolean> {
    const read = readSpecimen(texts.readable, quantities, false)
    setErrors(read.errors ?? {})
    if (read.fields === null) return false
    const specimen = await add.run({ fields: read.fields, by: signer })
    if (specimen === null) return false
    if (by !== 'again') {
      go({ page: 'specimen', specimenId: specimen.specimenId })
      return true
    }
    setAdded({ number: specimen.fields.number })
    texts.onTexts({ ...texts.shown, number: nextNumber(specimen.fields.number), notes: '' })
    return true
  }

  return (
    <div className="form-page" ref={page}>
      <p className="crumb">
        <a href={hashOf({ page: 'specimens' })}>Specimens</a>
      </p>
      <h1>Add a specimen</h1>
      <Form onSubmit={submit}>
        <SpecimenFieldset form={texts} errors={withTaken(errors, add.error)} />
        <Notice trouble={add.error?.code === 'conflict' ? null : add.error} onDismiss={add.dismiss} />
        <div className="form-buttons">
          <button type="submit" className="button button-primary" aria-disabled={add.pending}>
            Add
          </button>
          <button type="submit" className="button" value="again" data-ctrl-enter="" aria-disabled={add.pending}>
            Add, and another like it <Keys keys="Ctrl Enter" />
          </button>
          <a className="button button-quiet" href={hashOf({ page: 'specimens' })}>
            Cancel
          </a>
          <SignedBy />
          <p aria-live="polite">{added === null ? '' : `${added.number} added.`}</p>
        </div>
      </Form>
    </div>
  )
}
