import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { SelectField } from '../../../widgets/Field.tsx'
import type { CalibrationOption } from './calibrationOptions.ts'

/** Under which calibration. `unit`: what the readings of the only break are in; null: several breaks, or not known. */
export function CalibrationChoice({
  options,
  chosen,
  unit,
  onChoose,
}: {
  options: readonly CalibrationOption[]
  chosen: number | null
  unit: ReadingUnit | null
  onChoose(calibrationId: number | null): void
}) {
  return (
    <SelectField
      label="Under which calibration"
      value={chosen ?? ''}
      onChange={({ currentTarget: { value } }) => onChoose(value === '' ? null : Number(value))}
      hint={
        unit === null
          ? 'A calibration fits only readings in its own unit; breaks with others are listed and stay as they are.'
          : `Only those for readings in ${unit}, as this break has them.`
      }
    >
      <option value="">Each under the scale of its result in force</option>
      {options.map((option) => (
        <option key={option.calibrationId} value={option.calibrationId}>
          {option.words}
        </option>
      ))}
    </SelectField>
  )
}
