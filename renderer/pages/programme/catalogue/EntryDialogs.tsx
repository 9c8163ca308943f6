import { useState } from 'react'
import type { CatalogueEntry, CatalogueKind } from '#contract/programme/catalogue.ts'
import { catalogueKinds } from '#words/programme/catalogueWords.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { SignedBy } from '../../../parts/decisions/SignedBy.tsx'
import { useSigner } from '../../../parts/decisions/signer.ts'
import { untouched, useTypedTexts } from '../../../parts/forms/useTypedTexts.ts'
import { CancelButton } from '../../../widgets/dialogs/CancelButton.tsx'
import { Dialog } from '../../../widgets/dialogs/Dialog.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { EntryFieldset } from './EntryFieldset.tsx'
import { type EntryErrors, entryTextsOf, entryUnits, readEntry } from './entryForm.ts'

/** Adds an entry of a kind. */
export function AddEntryDialog({ kind, onClose }: { kind: CatalogueKind; onClose(): void }) {
  const quantities = useQuantities()
  const signer = useSigner()
  const texts = useTypedTexts(() => untouched(entryTextsOf(kind, null)), entryUnits)
  const [errors, setErrors] = useState<EntryErrors>({})
  const add = useAction('catalogue.add')

  async function submit(): Promise<boolean> {
    const read = readEntry(kind, texts.readable, quantities)
    setErrors('errors' in read ? read.errors : {})
    if ('errors' in read || (await add.run({ fields: read.fields, by: signer })) === null) return false
    onClose()
    return true
  }

  return (
    <Dialog title={`Add ${catalogueKinds[kind].oneMore} to the catalogue`} onClose={onClose} width="wide">
      <Form onSubmit={submit}>
        <EntryFieldset kind={kind} form={texts} errors={errors} />
        <Notice trouble={add.error} />
        <SignedBy />
        <div className="dialog-buttons">
          <CancelButton>Cancel</CancelButton>
          <button type="submit" className="button button-primary" aria-disabled={add.pending}>
            Add
          </button>
        </div>
      </Form>
    </Dialog>
  )
}

/** Corrects an entry: the versions before stay, and so do the names. */
export function CorrectEntryDialog({ entry, onClose }: { entry: CatalogueEntry; onClose(): void }) {
  const quantities = useQuantities()
  const { kind, name } = entry.fields
  const texts = useTypedTexts(() => untouched(entryTextsOf(kind, entry.fields)), entryUnits)
  const [errors, setErrors] = useState<EntryErrors>({})
  const correct = useAction('catalogue.correct')
  return (
    <SignatureDialog
      title={`Correct ${name}`}
      explains="What was recorded under an older name stays as it was written, and counts as this entry."
      button="Record the correction"
      whyLabel="Reason for the correction"
      whyMissing="Give a reason; the entry before is kept too."
      wide
      pending={correct.pending}
      error={correct.error}
      onSign={async (signature) => {
        const read = readEntry(kind, texts.readable, quantities)
        setErrors('errors' in read ? read.errors : {})
        if ('errors' in read || signature === null) return false
        return (await correct.run({ entryId: entry.entryId, fields: read.fields, ...signature })) !== null
      }}
      onClose={onClose}
    >
      <EntryFieldset kind={kind} form={texts} errors={errors} />
    </SignatureDialog>
  )
}
