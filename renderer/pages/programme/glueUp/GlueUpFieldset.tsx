import { lotQuestion } from '#words/programme/glueUpWords.ts'
import { stillToComeQuestion } from '#words/units/typedDay.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { CatalogueField } from '../../../parts/catalogue/CatalogueField.tsx'
import { today } from '../../../parts/forms/today.ts'
import type { TypedForm } from '../../../parts/forms/useTypedTexts.ts'
import { Field, TextField } from '../../../widgets/Field.tsx'
import { type GlueUpErrors, type GlueUpTextKey, type GlueUpTexts, glueUpNumbers } from './glueUpForm.ts'

/** Day, air, adhesive, clamping, people; a lot for each adhesive and a place for each exposure. */
export function GlueUpFieldset({
  form,
  errors,
  adhesives,
  exposures,
}: {
  form: TypedForm<GlueUpTexts>
  errors: GlueUpErrors
  adhesives: readonly string[]
  exposures: readonly string[]
}) {
  const quantities = useQuantities()
  const { shown, onTexts } = form
  const bind = (key: GlueUpTextKey) => ({
    value: shown[key],
    error: errors[key] ?? null,
    onChange: (event: { currentTarget: { value: string } }) => onTexts({ ...shown, [key]: event.currentTarget.value }),
  })
  const number = (key: keyof typeof glueUpNumbers) => ({
    ...bind(key),
    unit: glueUpNumbers[key].unit(quantities).unit,
  })
  const bindIn = (member: 'lots' | 'places', name: string) => ({
    value: shown[member][name] ?? '',
    onValue: (value: string) => onTexts({ ...shown, [member]: { ...shown[member], [name]: value } }),
  })
  return (
    <div className="glue-fields">
      <Field
        label="Glued on"
        type="date"
        required
        question={stillToComeQuestion(shown.gluedOn, today())}
        {...bind('gluedOn')}
      />
      <Field label="Temperature" {...number('temperatureC')} />
      <Field label="Relative humidity" {...number('humidityPercent')} />
      <Field label="Moisture of the wood" {...number('woodMoisturePercent')} />
      <Field label="Spread" {...number('spreadGPerM2')} />
      <Field label="Open time" {...number('openTimeMin')} />
      <Field label="Clamp time" {...number('clampTimeMin')} />
      <Field label="Pressure" {...number('pressureMPa')} />
      {adhesives.map((adhesive) => (
        <CatalogueField
          key={adhesive}
          kind="lot"
          of={adhesive}
          label={`Lot of ${adhesive}`}
          ask={(fields) => lotQuestion(fields, shown.gluedOn)}
          {...bindIn('lots', adhesive)}
        />
      ))}
      {exposures.map((exposure) => (
        <CatalogueField
          key={exposure}
          kind="place"
          label={exposure === '' ? 'Place on the shelf' : `Place of the ${exposure} blocks`}
          {...bindIn('places', exposure)}
        />
      ))}
      <Field label="People" {...bind('people')} maxLength={200} />
      <div className="glue-wide">
        <TextField label="Notes" maxLength={4000} {...bind('notes')} />
      </div>
    </div>
  )
}
