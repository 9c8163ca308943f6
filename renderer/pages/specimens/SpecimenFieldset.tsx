import { areaQuestion } from '#words/specimens/plausibleWords.ts'
import { stillToComeQuestion } from '#words/units/typedDay.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { CatalogueField } from '../../parts/catalogue/CatalogueField.tsx'
import { sizesOf } from '../../parts/forms/overlapSizes.ts'
import { today } from '../../parts/forms/today.ts'
import type { TypedForm } from '../../parts/forms/useTypedTexts.ts'
import { Field, TextField } from '../../widgets/Field.tsx'
import { type FormErrors, type SpecimenTexts, withArea, withNominal } from './specimenForm.ts'
import './specimens.css'

/** The fields of a specimen, in the order in which one reads them off the block and the glue-up sheet. */
export function SpecimenFieldset({ form, errors }: { form: TypedForm<SpecimenTexts>; errors: FormErrors }) {
  const quantities = useQuantities()
  const { length, area } = quantities
  const { shown, readable, onTexts } = form
  const bind = (key: keyof SpecimenTexts) => ({
    value: shown[key],
    error: errors[key] ?? null,
    onChange: (event: { currentTarget: { value: string } }) => onTexts({ ...shown, [key]: event.currentTarget.value }),
  })
  const bindSide = (key: 'overlapLengthMm' | 'overlapWidthMm') => ({
    ...bind(key),
    onChange: (event: { currentTarget: { value: string } }) => {
      const { value } = event.currentTarget
      const { areaMm2 } = withArea(readable, { ...readable, [key]: value }, quantities)
      onTexts({ ...shown, [key]: value, ...(areaMm2 === readable.areaMm2 ? {} : { areaMm2 }) })
    },
  })
  const bindName = (key: keyof SpecimenTexts) => ({
    value: shown[key],
    error: errors[key] ?? null,
    onValue: (value: string) => onTexts({ ...shown, [key]: value }),
  })
  return (
    <div className="specimen-fields">
      <Field label="Specimen number" required {...bind('number')} autoComplete="off" className="span-2" />
      <CatalogueField kind="adhesive" label="Adhesive" required {...bindName('adhesive')} className="span-2" />
      <CatalogueField kind="lot" of={shown.adhesive} label="Lot or bottle" {...bindName('lot')} className="span-2" />
      <CatalogueField kind="wood" label="Wood" {...bindName('wood')} placeholder="beech" className="span-3" />
      <CatalogueField kind="board" of={shown.wood} label="Board" {...bindName('board')} className="span-3" />
      <CatalogueField
        kind="joint-type"
        label="Joint type"
        {...bindName('jointType')}
        onValue={(jointType, chosen) =>
          onTexts(withNominal({ ...shown, jointType }, chosen?.kind === 'joint-type' ? chosen : null, quantities))
        }
        placeholder="long grain to long grain"
        className="span-3"
      />
      <CatalogueField
        kind="exposure"
        label="Exposure"
        {...bindName('exposure')}
        placeholder="loft, bilge, soak …"
        className="span-3"
      />
      <Field label="Overlap length" unit={length.unit} {...bindSide('overlapLengthMm')} className="span-1h" />
      <Field label="Overlap width" unit={length.unit} {...bindSide('overlapWidthMm')} className="span-1h" />
      <Field
        label="Bonded area"
        unit={area.unit}
        question={areaQuestion(sizesOf(readable, quantities), area)}
        {...bind('areaMm2')}
        className="span-1h"
        hint="Length times width, unless you write another."
      />
      <Field
        label="Bond line gap"
        unit={length.unit}
        {...bind('bondLineGapMm')}
        className="span-1h"
        hint="0 for a tight joint."
      />
      <Field
        label="Glued on"
        type="date"
        question={stillToComeQuestion(shown.gluedOn, today())}
        {...bind('gluedOn')}
        className="span-3"
      />
      <CatalogueField kind="place" label="Place on the shelf" {...bindName('place')} className="span-3" />
      <div className="span-6">
        <TextField label="Notes" maxLength={4000} {...bind('notes')} />
      </div>
    </div>
  )
}
