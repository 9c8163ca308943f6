import type { DetectionSettings } from '#contract/breaks/detection.ts'
import { settingWords, thresholdGroups, thresholdUnit } from '#words/breaks/thresholdWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Field } from '../../../widgets/Field.tsx'
import type { ThresholdErrors, ThresholdTexts } from './thresholdForm.ts'

/** Thresholds that may differ; an empty one stays as it was at capture. Beside each stands what it is or usually is. */
export function ThresholdFieldset({
  texts,
  errors,
  onTexts,
  beside,
  besideWord,
}: {
  texts: ThresholdTexts
  errors: ThresholdErrors
  onTexts(texts: ThresholdTexts): void
  beside: DetectionSettings
  /** What the settings beside are: "at capture", "usual". */
  besideWord: string
}) {
  const quantities = useQuantities()
  return (
    <div className="threshold-groups">
      {thresholdGroups.map(({ title, thresholds }) => (
        <fieldset key={title}>
          <legend className="threshold-title">{title}</legend>
          <div className="threshold-fields">
            {thresholds.map((threshold) => {
              const { key, label, kind } = threshold
              const { unit } = thresholdUnit(kind, quantities)
              return (
                <Field
                  key={key}
                  label={label}
                  unit={unit === '' ? undefined : unit}
                  autoComplete="off"
                  value={texts[key]}
                  error={errors[key] ?? null}
                  hint={`${besideWord}: ${settingWords(beside, threshold, quantities)}`}
                  onChange={(event) => onTexts({ ...texts, [key]: event.currentTarget.value })}
                />
              )
            })}
          </div>
        </fieldset>
      ))}
    </div>
  )
}
