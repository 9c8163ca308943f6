import { type FormEvent, useState } from 'react'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { oimlClass } from '#contract/calibration/weight.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import { materialDensity } from '#domain/calibration/weights/weightDensity.ts'
import { classHalfWidthKg } from '#domain/calibration/weights/weightTolerance.ts'
import { toleranceWords } from '#words/calibration/toleranceWords.ts'
import { materialNames } from '#words/calibration/weightWords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Dialog } from '../../../widgets/dialogs/Dialog.tsx'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { emptyWeight, readWeight, textsOfWeight, type WeightTexts } from './weightForm.ts'

type TypedKey = 'name' | 'nominal' | 'conventional' | 'halfWidthG' | 'density'

/** One weight of the set: its name, mass, tolerance and density. */
export function WeightDialog({
  weight,
  others,
  error,
  pending,
  onClose,
  onSave,
}: {
  weight: WeightEntry | null
  others: readonly string[]
  error: TroubleMessage | null
  pending: boolean
  onClose(): void
  onSave(weight: WeightEntry): Promise<void>
}) {
  const { mass } = useQuantities()
  const [texts, setTexts] = useState<WeightTexts>(weight === null ? emptyWeight : textsOfWeight(weight, mass))
  const [asked, setAsked] = useState(false)
  const read = readWeight(texts, others, mass)
  const noLimit = read.weight?.tolerance.kind === 'oiml' && classHalfWidthKg(read.weight) === null
  const errors = asked ? (read.errors ?? {}) : {}
  const bind = (key: TypedKey) => ({
    value: texts[key],
    error: errors[key] ?? null,
    onChange: (event: { currentTarget: { value: string } }) => setTexts({ ...texts, [key]: event.currentTarget.value }),
  })

  const fields = { texts, onTexts: setTexts, bind }

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    if (read.weight !== null && !noLimit) await onSave(read.weight)
  }

  return (
    <Dialog title={weight === null ? 'Add a weight' : `Change ${weight.name}`} onClose={onClose}>
      <form className="form" noValidate onSubmit={(event) => void submit(event)}>
        <div className="field-pair">
          <Field
            label="Name marked on it"
            required
            maxLength={200}
            data-first-focus=""
            autoComplete="off"
            placeholder="10 kg"
            {...bind('name')}
          />
          <Field label="Nominal mass" required unit={mass.unit} inputMode="decimal" {...bind('nominal')} />
        </div>
        <Field
          label="Mass by its certificate or a good scale"
          unit={mass.unit}
          inputMode="decimal"
          hint="Leave empty to use the nominal mass."
          {...bind('conventional')}
        />
        <ToleranceFields {...fields} read={read.weight} noLimit={noLimit} />
        <DensityFields {...fields} />
        <Notice trouble={error} />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Cancel
          </button>
          <button type="submit" className="button button-primary" disabled={pending}>
            Save
          </button>
        </div>
      </form>
    </Dialog>
  )
}

type FieldsProps = {
  texts: WeightTexts
  onTexts(texts: WeightTexts): void
  bind(key: TypedKey): {
    value: string
    error: string | null
    onChange(event: { currentTarget: { value: string } }): void
  }
}

/** How far the mass may be off: by its class, or by a tolerance of its own. */
function ToleranceFields({
  texts,
  onTexts,
  bind,
  read,
  noLimit,
}: FieldsProps & {
  read: WeightEntry | null
  /** The class that is chosen has no limit for the mass. */
  noLimit: boolean
}) {
  return (
    <div className="field-pair">
      <SelectField
        label="Accuracy"
        value={texts.class}
        onChange={(event) => onTexts({ ...texts, class: event.currentTarget.value as WeightTexts['class'] })}
      >
        {oimlClass.options.map((name) => (
          <option key={name} value={name}>
            class {name}, OIML R 111
          </option>
        ))}
        <option value="own">own tolerance</option>
      </SelectField>
      {texts.class === 'own' ? (
        <Field label="May be off by" unit="± g" inputMode="decimal" {...bind('halfWidthG')} />
      ) : (
        <p className="field-beside" data-wrong={noLimit ? '' : undefined}>
          {read === null
            ? 'The class gives the tolerance.'
            : noLimit
              ? 'This class has no limit for this mass. Give the weight a tolerance of its own.'
              : toleranceWords(read)}
        </p>
      )}
    </div>
  )
}

/** What it is made of, for the buoyancy of the air. */
function DensityFields({ texts, onTexts, bind }: FieldsProps) {
  return (
    <div className="field-pair">
      <SelectField
        label="Made of"
        value={texts.material}
        onChange={(event) => onTexts({ ...texts, material: event.currentTarget.value as WeightTexts['material'] })}
      >
        {materialNames.map((name) => (
          <option key={name} value={name}>
            {name}, {writeFixed(materialDensity[name], 0)} kg/m³
          </option>
        ))}
        <option value="typed">another density</option>
      </SelectField>
      {texts.material === 'typed' ? (
        <Field label="Density" unit="kg/m³" inputMode="decimal" {...bind('density')} />
      ) : null}
    </div>
  )
}
