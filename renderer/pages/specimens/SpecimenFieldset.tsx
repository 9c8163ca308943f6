import { useQuantities } from '../../host/useQuantities.ts'
import { Field, TextField } from '../../widgets/Field.tsx'
import { areaFromOverlap, type FormErrors, type SpecimenTexts } from './specimenForm.ts'
import './specimens.css'

/** The fields of a specimen, in the order in which one reads them off the block and the glue-up sheet. */
export function SpecimenFieldset({
  texts,
  errors,
  onTexts,
}: {
  texts: SpecimenTexts
  errors: FormErrors
  onTexts(texts: SpecimenTexts): void
}) {
  const { length, area } = useQuantities()
  const bind = (key: keyof SpecimenTexts) => ({
    value: texts[key],
    error: errors[key] ?? null,
    onChange: (event: { currentTarget: { value: string } }) => onTexts({ ...texts, [key]: event.currentTarget.value }),
  })
  // The area follows the overlap for as long as it says what the overlap said before.
  const bindSide = (key: 'overlapLengthMm' | 'overlapWidthMm') => ({
    ...bind(key),
    inputMode: 'decimal' as const,
    onChange: (event: { currentTarget: { value: string } }) => {
      const next = { ...texts, [key]: event.currentTarget.value }
      const follows =
        texts.areaMm2 === '' || texts.areaMm2 === areaFromOverlap(texts.overlapLengthMm, texts.overlapWidthMm)
      onTexts(follows ? { ...next, areaMm2: areaFromOverlap(next.overlapLengthMm, next.overlapWidthMm) } : next)
    },
  })
  return (
    <div className="specimen-fields">
      <Field label="Specimen number" required {...bind('number')} autoComplete="off" className="span-2" />
      <Field label="Adhesive" required {...bind('adhesive')} className="span-2" />
      <Field label="Lot or bottle" {...bind('lot')} className="span-2" />
      <Field label="Joint type" {...bind('jointType')} placeholder="long grain to long grain" className="span-3" />
      <Field label="Exposure" {...bind('exposure')} placeholder="loft, bilge, soak …" className="span-3" />
      <Field label="Overlap length" unit={length.unit} {...bindSide('overlapLengthMm')} className="span-1h" />
      <Field label="Overlap width" unit={length.unit} {...bindSide('overlapWidthMm')} className="span-1h" />
      <Field
        label="Bonded area"
        unit={area.unit}
        inputMode="decimal"
        {...bind('areaMm2')}
        className="span-1h"
        hint="Length times width, unless you write another."
      />
      <Field
        label="Bond line gap"
        unit={length.unit}
        inputMode="decimal"
        {...bind('bondLineGapMm')}
        className="span-1h"
        hint="0 for a tight joint."
      />
      <Field label="Glued on" type="date" {...bind('gluedOn')} className="span-3" />
      <Field label="Place on the shelf" {...bind('place')} className="span-3" />
      <div className="span-6">
        <TextField label="Notes" maxLength={4000} {...bind('notes')} />
      </div>
    </div>
  )
}
