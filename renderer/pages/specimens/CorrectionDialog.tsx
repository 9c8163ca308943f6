import { useState } from 'react'
import type { Specimen } from '#contract/specimens/specimen.ts'
import { useAction } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { SignatureDialog } from '../../parts/decisions/SignatureDialog.tsx'
import { untouched, useTypedTexts } from '../../parts/forms/useTypedTexts.ts'
import { SpecimenFieldset } from './SpecimenFieldset.tsx'
import { type FormErrors, readSpecimen, specimenUnits, textsOf, withTaken } from './specimenForm.ts'

/** Corrects a specimen: the fields before stay in its history, with who changed them and why. */
export function CorrectionDialog({ specimen, onClose }: { specimen: Specimen; onClose(): void }) {
  const quantities = useQuantities()
  const texts = useTypedTexts(() => untouched(textsOf(specimen.fields)), specimenUnits)
  const [errors, setErrors] = useState<FormErrors>({})
  const correct = useAction('specimens.correct')
  return (
    <SignatureDialog
      title={`Correct ${specimen.fields.number}`}
      button="Record the correction"
      whyLabel="Reason for the correction"
      whyMissing="Give a reason; the version before is kept too."
      wide
      pending={correct.pending}
      error={correct.error?.code === 'conflict' ? null : correct.error}
      onSign={async (signature) => {
        const { fields, errors: wrong } = readSpecimen(texts.readable, quantities, specimen.fields.demo)
        setErrors(wrong ?? {})
        if (fields === null || signature === null) return false
        return (await correct.run({ specimenId: specimen.specimenId, fields, ...signature })) !== null
      }}
      onClose={onClose}
    >
      <SpecimenFieldset form={texts} errors={withTaken(errors, correct.error)} />
    </SignatureDialog>
  )
}
