import type { CatalogueKind } from '#contract/programme/catalogue.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { CatalogueField } from '../../../parts/catalogue/CatalogueField.tsx'
import type { TypedForm } from '../../../parts/forms/useTypedTexts.ts'
import { Field, TextField } from '../../../widgets/Field.tsx'
import { type EntryErrors, type EntryTexts, entryFieldsOf } from './entryForm.ts'

/** The fields of an entry of the catalogue. */
export function EntryFieldset({
  kind,
  form: { shown, onTexts },
  errors,
}: {
  kind: CatalogueKind
  form: TypedForm<EntryTexts>
  errors: EntryErrors
}) {
  const { length, area } = useQuantities()
  const put = (key: string, value: string) => onTexts({ ...shown, [key]: value })
  return (
    <div className="entry-fields">
      {entryFieldsOf(kind).map(({ key, label, typed, unit, hint }) => {
        const common = { label, value: shown[key] ?? '', error: errors[key] ?? null }
        const onChange = (event: { currentTarget: { value: string } }) => put(key, event.currentTarget.value)
        if (typed === 'note')
          return (
            <div className="entry-fields-wide" key={key}>
              <TextField {...common} maxLength={4000} onChange={onChange} />
            </div>
          )
        if (typed === 'owner')
          return (
            <CatalogueField
              key={key}
              {...common}
              kind={kind === 'lot' ? 'adhesive' : 'wood'}
              required={kind === 'lot'}
              onValue={(value) => put(key, value)}
            />
          )
        const shownUnit = typed === 'length' ? length.unit : typed === 'area' ? area.unit : unit
        return (
          <Field
            key={key}
            {...common}
            hint={hint}
            unit={shownUnit}
            required={key === 'name'}
            type={typed === 'day' ? 'date' : 'text'}
            onChange={onChange}
          />
        )
      })}
    </div>
  )
}
