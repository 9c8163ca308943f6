import { useState } from 'react'
import type { GlueUpRecord } from '#contract/programme/glueUpProcedures.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { untouched, useTypedTexts } from '../../../parts/forms/useTypedTexts.ts'
import { GlueUpFieldset } from './GlueUpFieldset.tsx'
import { type GlueUpErrors, glueUpUnits, readGlueUp, textsOfGlueUp } from './glueUpForm.ts'

/** Corrects a glue-up: what was entered stays in its history; day and lots of its specimens, and the days of its pulls, follow. */
export function CorrectGlueUpDialog({ record, onClose }: { record: GlueUpRecord; onClose(): void }) {
  const quantities = useQuantities()
  const form = useTypedTexts(() => untouched(textsOfGlueUp(record.fields)), glueUpUnits)
  const [errors, setErrors] = useState<GlueUpErrors>({})
  const correct = useAction('glueUps.correct')
  const adhesives = [...new Set([...record.specimens, ...record.fields.lots].map(({ adhesive }) => adhesive))]
  return (
    <SignatureDialog
      title="Correct the glue-up"
      explains="Its specimens get the day and the lots that it gets, and its pulls are counted from that day. Sizes and places are corrected at each specimen."
      button="Record the correction"
      whyLabel="Reason for the correction"
      whyMissing="Give a reason; what was entered before is kept too."
      wide
      pending={correct.pending}
      error={correct.error}
      onSign={async (signature) => {
        const { fields, errors: wrong } = readGlueUp(form.readable, adhesives, quantities)
        setErrors(wrong ?? {})
        if (fields === null || signature === null) return false
        return (await correct.run({ glueUpId: record.glueUpId, fields, ...signature })) !== null
      }}
      onClose={onClose}
    >
      <GlueUpFieldset form={form} errors={errors} adhesives={adhesives} exposures={[]} />
    </SignatureDialog>
  )
}
