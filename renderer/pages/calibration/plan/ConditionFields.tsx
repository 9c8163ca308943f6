import type { GravityChoice } from '#contract/calibration/loading.ts'
import { troubleFrom } from '#contract/errors.ts'
import { localGravity } from '#domain/calibration/weights/localGravity.ts'
import { writeFixed } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { sentenceIn } from '#words/units/sentenceIn.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Field } from '../../../widgets/Field.tsx'
import { Switch } from '../../../widgets/Switch.tsx'
import type { PlanErrors, PlanTexts } from './planForm.ts'

type TextKey = Exclude<keyof PlanTexts, 'steps' | 'decreasing' | 'gravityFrom' | 'lever'>

const gravityOptions = [
  { value: 'latitude', label: 'Latitude and height' },
  { value: 'typed', label: 'Typed g' },
] as const
const leverOptions = [
  { value: 'none', label: 'On the cell' },
  { value: 'lever', label: 'On a lever' },
] as const

/** Where the bench stands, how the weights hang, what the air is like, and how often all is done. */
export function ConditionFields({
  texts,
  errors,
  gravity,
  onChange,
}: {
  texts: PlanTexts
  errors: PlanErrors
  gravity: GravityChoice | null
  onChange(change: Partial<PlanTexts>): void
}) {
  const quantities = useQuantities()
  const { height, acceleration, temperature, density } = quantities
  const bind = (key: TextKey) => ({
    value: texts[key],
    error: errors[key] ?? null,
    onChange: (event: { currentTarget: { value: string } }) => onChange({ [key]: event.currentTarget.value }),
  })
  return (
    <section className="plan-conditions" aria-label="Gravity, lever, air and runs">
      <div className="condition-group">
        <Choice
          label="Gravity here"
          options={gravityOptions}
          value={texts.gravityFrom}
          onChange={(gravityFrom) => onChange({ gravityFrom })}
        />
        {texts.gravityFrom === 'latitude' ? (
          <div className="field-pair">
            <Field label="Latitude" unit="°" placeholder="53.4" {...bind('latitude')} />
            <Field label="Height above the sea" unit={height.unit} {...bind('height')} />
          </div>
        ) : (
          <div className="field-pair">
            <Field
              label="Local g"
              unit={acceleration.unit}
              placeholder={acceleration.number(9.8123)}
              {...bind('gravity')}
            />
            <Field label="May be off by" unit={`± ${acceleration.unit}`} {...bind('gravityHalfWidth')} />
          </div>
        )}
        <p className="condition-words">{gravityWords(gravity, quantities)}</p>
      </div>
      <div className="condition-group">
        <Choice
          label="The weights hang"
          options={leverOptions}
          value={texts.lever}
          onChange={(lever) => onChange({ lever })}
        />
        {texts.lever === 'lever' ? (
          <div className="field-pair">
            <Field label="Force on the cell over weight" placeholder="10" {...bind('leverRatio')} />
            <Field label="May be off by" unit="± %" {...bind('leverHalfWidth')} />
          </div>
        ) : null}
      </div>
      <div className="condition-group field-pair">
        <Field label="Temperature" unit={temperature.unit} {...bind('temperature')} />
        <Field label="Air density" unit={density.unit} {...bind('airDensity')} />
      </div>
      <Field
        label="Note on temperature"
        maxLength={4000}
        placeholder="heater off since morning"
        {...bind('temperatureNote')}
      />
      <div className="condition-group field-triple">
        <Field label="Preloads" inputMode="numeric" {...bind('preloads')} />
        <Field label="Runs" inputMode="numeric" {...bind('runs')} />
        <Field label="Average over" unit="s" {...bind('averageS')} />
      </div>
      <Field
        label="Hold the highest load at the end, to measure creep"
        unit="s"
        placeholder="300 is usual; empty: not measured"
        {...bind('creepHoldS')}
      />
      <Switch
        label="Down again through the same steps"
        on={texts.decreasing}
        onChange={(decreasing) => onChange({ decreasing })}
        onWord="yes"
        offWord="no"
      />
    </section>
  )
}

/** The gravity that follows, in words; nothing while it cannot be said. */
function gravityWords(gravity: GravityChoice | null, quantities: Quantities): string {
  if (gravity === null) return 'Enter latitude and height to get g.'
  try {
    const { gMPerS2, halfWidthShare } = localGravity(gravity)
    return `g = ${quantities.acceleration.text(gMPerS2)}, within ±${writeFixed(halfWidthShare * 100, 3)} %`
  } catch (thrown) {
    return sentenceIn(troubleFrom(thrown).message, quantities)
  }
}
