import { useState } from 'react'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { oimlClass } from '#contract/calibration/weight.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import { materialDensity } from '#domain/calibration/weights/weightDensity.ts'
import { classHalfWidthKg } from '#domain/calibration/weights/weightTolerance.ts'
import { toleranceWords } from '#words/calibration/toleranceWords.ts'
import { materialNames } from '#words/calibration/weightWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { untouched, useTypedTexts } from '../../../parts/forms/useTypedTexts.ts'
import { CancelButton } from '../../../widgets/dialogs/CancelButton.tsx'
import { Dialog } from '../../../widgets/dialogs/Dialog.tsx'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { emptyWeight, readWeight, textsOfWeight, type WeightTexts, weightUnits } from './weightForm.ts'

type TypedKey = 'name' | 'nominal' | 'conventional' | 'halfWidth' | 'density'

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
  /** Resolves with true when it is kept. */
  onSave(weight: WeightEntry): Promise<boolean>
}) {
  const quantities = useQuantities()
  const { mass } = quantities
  const form = useTypedTexts(() => untouched(weight === null ? emptyWeight : textsOfWeight(weight)), weightUnits)
  const { shown: texts, onTexts: setTexts } = form
  const [asked, setAsked] = useState(false)
  const read = readWeight(form.readable, others, quantities)
  const noLimit = read.weight?.tolerance.kind === 'oiml' && classHalfWidthKg(read.weight) === null
  const errors = asked ? (read.errors ?? {}) : {}
  const bind = (key: TypedKey) => ({
    value: texts[key],
    error: errors[key] ?? null,
    onChange: (event: { currentTarget: { value: string } }) => setTexts({ ...texts, [key]: event.currentTarget.value }),
  })

  const fields = { texts, onTexts: setTexts, bind }

  async function submit(): Promise<boolean> {
    setAsked(true)
    return read.weight !== null && !noLimit && (await onSave(read.weight))
  }

  return (
    <Dialog title={weight === null ? 'Add a weight' : `Change ${weight.name}`} onClose={onClose}>
      <Form onSubmit={submit}>
        <div className="field-pair">
          <Field
            label="Name marked on it"
            required
            maxLength={200}
            data-first-focus=""
            autoComplete="off"
            placeholder={`10 ${mass.unit}`}
            {...bind('name')}
          />
          <Field label="Nominal mass" required unit={mass.unit} {...bind('nominal')} />
        </div>
        <Field
          label="Mass by its certificate or a good scale"
          unit={mass.unit}
          hint="Leave empty to use the nominal mass."
          {...bind('conventional')}
        />
        <ToleranceFields {...fields} read={read.weight} noLimit={noLimit} />
        <DensityFields {...fields} />
        <Notice trouble={error} />
        <div className="dialog-buttons">
          <CancelButton />
          <button type="submit" className="button button-primary" aria-disabled={pending}>
            Save
          </button>
        </div>
      </Form>
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
  const { smallMass } = useQuantities()
  return (
    <div className="field-pair">
      <SelectField
        label="Accuracy"
        value={texts.class}
        error={noLimit ? 'This class has no limit for this mass. Give the weight a tolerance of its own.' : null}
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
        <Field label="May be off by" unit={`± ${smallMass.unit}`} {...bind('halfWidth')} />
      ) : (
        <p className="field-beside">
          {read === null || noLimit ? 'The class gives the tolerance.' : toleranceWords(read, smallMass)}
        </p>
      )}
    </div>
  )
}

/** What it is made of, for the buoyancy of the air. */
function DensityFields({ texts, onTexts, bind }: FieldsProps) {
  const { density } = useQuantities()
  return (
    <div className="field-pair">
      <SelectField
        label="Made of"
        value={texts.material}
        onChange={(event) => onTexts({ ...texts, material: event.currentTarget.value as WeightTexts['material'] })}
      >
        {materialNames.map((name) => (
          <option key={name} value={name}>
            {name}, {density.text(materialDensity[name])}
          </option>
        ))}
        <option value="typed">another density</option>
      </SelectField>
      {texts.material === 'typed' ? <Field label="Density" unit={density.unit} {...bind('density')} /> : null}
    </div>
  )
}
