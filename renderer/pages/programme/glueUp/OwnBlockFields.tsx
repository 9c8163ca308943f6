import { useQuantities } from '../../../host/useQuantities.ts'
import { CatalogueField } from '../../../parts/catalogue/CatalogueField.tsx'
import type { TypedForm } from '../../../parts/forms/useTypedTexts.ts'
import { Field, TextField } from '../../../widgets/Field.tsx'
import type { OwnBlockErrors, OwnBlockTexts } from './ownBlocks.ts'

/** What blocks of no study have in common, how many there are, and what is written on them. */
export function OwnBlockFields({ form, errors }: { form: TypedForm<OwnBlockTexts>; errors: OwnBlockErrors }) {
  const { length } = useQuantities()
  const { shown, onTexts } = form
  const bind = (key: keyof OwnBlockTexts) => ({
    value: shown[key],
    error: errors[key] ?? null,
    onChange: (event: { currentTarget: { value: string } }) => onTexts({ ...shown, [key]: event.currentTarget.value }),
  })
  const bindName = (key: keyof OwnBlockTexts) => ({
    value: shown[key],
    error: errors[key] ?? null,
    onValue: (value: string) => onTexts({ ...shown, [key]: value }),
  })
  return (
    <div className="glue-fields">
      <Field label="How many blocks" inputMode="numeric" {...bind('count')} />
      <CatalogueField kind="adhesive" label="Adhesive" required {...bindName('adhesive')} />
      <CatalogueField kind="joint-type" label="Joint type" {...bindName('jointType')} />
      <CatalogueField kind="exposure" label="Exposure" {...bindName('exposure')} />
      <Field label="Bond line gap" unit={length.unit} {...bind('bondLineGapMm')} />
      <CatalogueField kind="wood" label="Wood" {...bindName('wood')} />
      <CatalogueField kind="board" of={shown.wood} label="Board" {...bindName('board')} />
      <div className="glue-wide">
        <TextField label="Numbers on the blocks, one a line (none: short numbers are given)" {...bind('numbers')} />
      </div>
    </div>
  )
}
