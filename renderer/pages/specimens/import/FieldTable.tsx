import {
  dayFields,
  type FieldSource,
  type ImportField,
  type ImportMapping,
  importField,
  importUnit,
  type MeasuredField,
  unitsOfField,
} from '#contract/specimens/importMapping.ts'
import type { SheetColumn } from '#contract/specimens/sheetView.ts'
import { fieldTitle } from '#words/specimens/import/sheetWords.ts'
import { FieldChoice } from './FieldChoice.tsx'
import { columnOf, columnsOfField, valueOfBlock, withSource } from './mappingDraft.ts'

const dateForms = [
  'YYYY-M-D',
  'D.M.YYYY',
  'M/D/YYYY',
  'D/M/YYYY',
  'D MMM YYYY',
  'MMM D, YYYY',
  'YYYYMMDD',
  'D.M.YY',
  'M/D/YY',
]

type Props = { mapping: ImportMapping; columns: readonly SheetColumn[]; onMapping(mapping: ImportMapping): void }

/** Every field that is read, where it comes from and in which unit; and values that hold for all rows. */
export function FieldTable({ mapping, columns, onMapping }: Props) {
  const used = importField.options.filter(
    (field) =>
      mapping.fields[field] !== undefined ||
      columnsOfField(mapping, field).length > 0 ||
      (mapping.blocks ?? []).some((block) => valueOfBlock(block, field) !== ''),
  )
  const free = importField.options.filter((field) => !used.includes(field))
  return (
    <table className="data-table import-fields">
      <caption className="visually-hidden">Fields</caption>
      <thead>
        <tr>
          <th scope="col">Field</th>
          <th scope="col">Comes from</th>
          <th scope="col">Unit, or how a date is written</th>
        </tr>
      </thead>
      <tbody>
        {used.map((field) => (
          <FieldRow key={field} {...{ field, mapping, columns, onMapping }} />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={3}>
            <FieldChoice
              label="The same for all rows:"
              free={free}
              onField={(field) => onMapping(withSource(mapping, field, { ...firstUnit(field), value: '' }))}
            />
          </td>
        </tr>
      </tfoot>
    </table>
  )
}

function FieldRow({ field, mapping, columns, onMapping }: Props & { field: ImportField }) {
  const source = mapping.fields[field] ?? {}
  const change = (next: FieldSource | null) => onMapping(withSource(mapping, field, next))
  return (
    <tr>
      <th scope="row">{fieldTitle(field)}</th>
      <td>
        {source.value === undefined ? (
          fromWords(mapping, columns, field, source)
        ) : (
          <span className="import-value">
            <input
              aria-label={`${fieldTitle(field)} of all rows`}
              value={source.value}
              maxLength={200}
              onChange={(event) => change({ ...source, value: event.currentTarget.value })}
            />
            <button type="button" className="button button-quiet button-small" onClick={() => change(null)}>
              Leave out
            </button>
          </span>
        )}
      </td>
      <td>
        <FormSelect field={field} source={source} onChange={change} />
      </td>
    </tr>
  )
}

/** In which unit the numbers of a field stand, or how its days are written. */
function FormSelect({
  field,
  source,
  onChange,
}: {
  field: ImportField
  source: FieldSource
  onChange(source: FieldSource): void
}) {
  const { unit: _unit, dateFormat: _form, ...rest } = source
  const name = fieldTitle(field)
  if (Object.hasOwn(unitsOfField, field))
    return (
      <select
        aria-label={`Unit of ${name}`}
        value={source.unit ?? ''}
        onChange={(event) => {
          const unit = importUnit.safeParse(event.currentTarget.value).data
          onChange(unit === undefined ? rest : { ...rest, unit })
        }}
      >
        <option value="">{field === 'ageMonths' ? 'months, or as each cell says' : 'as each cell says'}</option>
        {unitsOfField[field as MeasuredField].map((unit) => (
          <option key={unit} value={unit}>
            {unitName(unit)}
          </option>
        ))}
      </select>
    )
  if (!(dayFields as readonly string[]).includes(field)) return null
  return (
    <select
      aria-label={`How ${name} is written`}
      value={source.dateFormat ?? ''}
      onChange={(event) => {
        const dateFormat = event.currentTarget.value
        onChange(dateFormat === '' ? rest : { ...rest, dateFormat })
      }}
    >
      <option value="">only what can be but one day</option>
      {[...new Set([...dateForms, ...(source.dateFormat === undefined ? [] : [source.dateFormat])])].map((form) => (
        <option key={form} value={form}>
          {form}
        </option>
      ))}
    </select>
  )
}

const unitName = (unit: string) => unit.replace(/2$/, '²')

function firstUnit(field: ImportField): FieldSource {
  return Object.hasOwn(unitsOfField, field) ? { unit: unitsOfField[field as MeasuredField][0] } : {}
}

function fromWords(
  mapping: ImportMapping,
  columns: readonly SheetColumn[],
  field: ImportField,
  source: FieldSource,
): string {
  if (source.fillOf !== undefined) return `the colour of the ${fieldTitle(source.fillOf).toLowerCase()}`
  const shown = columnsOfField(mapping, field).map((name) => {
    const place = columnOf(columns, name)
    return place === null ? `“${name}”, which this sheet lacks` : columns[place]!.letters
  })
  if (shown.length === 0 && (mapping.blocks ?? []).some((block) => valueOfBlock(block, field) !== ''))
    return 'what is said of each block'
  return shown.length === 1
    ? `column ${shown[0]}`
    : shown.length === 0
      ? 'the columns that are still to be chosen'
      : `columns ${shown.join(', ')}`
}
