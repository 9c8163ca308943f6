import { useQuantities } from '../../../host/useQuantities.ts'
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
  return (
    <div className="glue-fields">
      <Field label="How many blocks" inputMode="numeric" {...bind('count')} />
      <Field label="Adhesive" required {...bind('adhesive')} />
      <Field label="Joint type" {...bind('jointType')} />
      <Field label="Exposure" {...bind('exposure')} />
      <Field label="Bond line gap" unit={length.unit} {...bind('bondLineGapMm')} />
      <Field label="Wood" {...bind('wood')} />
      <Field label="Board" {...bind('board')} />
      <div className="glue-wide">
        <TextField label="Numbers on the blocks, one a line (none: short numbers are given)" {...bind('numbers')} />
      </div>
    </div>
  )
}
