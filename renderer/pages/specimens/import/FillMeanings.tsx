import {
  type FieldSource,
  type ImportField,
  type ImportMapping,
  importField,
} from '#contract/specimens/importMapping.ts'
import type { SheetColumn } from '#contract/specimens/sheetView.ts'
import { colourName } from '#words/specimens/import/colourWords.ts'
import { unsaidColour } from '#words/specimens/import/rejectedWords.ts'
import { fieldTitle } from '#words/specimens/import/sheetWords.ts'
import { countOf } from '#words/units/counts.ts'
import { FieldChoice } from './FieldChoice.tsx'
import { FillMark } from './FillMark.tsx'
import { coloursOf, columnsOfField, withSource } from './mappingDraft.ts'

type Props = { mapping: ImportMapping; columns: readonly SheetColumn[]; onMapping(mapping: ImportMapping): void }

/** What the colours of cells say: those that were found, how often, and a value for each. */
export function FillMeanings(props: Props) {
  const { mapping, columns, onMapping } = props
  const byFill = importField.options.filter((field) => mapping.fields[field]?.fillOf !== undefined)
  const coloured = importField.options.filter((field) =>
    coloursOf(mapping, columns, field).some(({ fill }) => fill !== null),
  )
  const free = importField.options.filter(
    (field) => mapping.fields[field] === undefined && columnsOfField(mapping, field).length === 0,
  )
  if (coloured.length === 0 && byFill.length === 0) return null
  return (
    <section aria-labelledby="fills-title">
      <h2 id="fills-title">Colours of cells</h2>
      {byFill.map((field) => (
        <MeaningsOf key={field} {...props} field={field} coloured={coloured} />
      ))}
      {coloured.length === 0 || free.length === 0 ? null : (
        <FieldChoice
          label={byFill.length === 0 ? 'The colour of a cell says:' : 'It also says:'}
          className="import-inline"
          free={free}
          onField={(field) => onMapping(withSource(mapping, field, { fillOf: coloured[0]!, fills: {}, noFill: null }))}
        />
      )}
    </section>
  )
}

/** The colours of the cells of one field, and what each says of another. */
function MeaningsOf({
  field,
  coloured,
  mapping,
  columns,
  onMapping,
}: Props & { field: ImportField; coloured: readonly ImportField[] }) {
  const source: FieldSource = mapping.fields[field] ?? {}
  const { fillOf, fills = {}, noFill = null } = source
  const change = (next: FieldSource) => onMapping(withSource(mapping, field, next))
  const of = fillOf === undefined || coloured.includes(fillOf) ? coloured : [fillOf, ...coloured]
  return (
    <div className="fill-meanings">
      <label className="import-inline">
        The colour of the cell of{' '}
        <select
          value={fillOf}
          onChange={(event) => change({ ...source, fillOf: event.currentTarget.value as ImportField })}
        >
          {of.map((one) => (
            <option key={one} value={one}>
              {fieldTitle(one)}
            </option>
          ))}
        </select>{' '}
        says: <strong>{fieldTitle(field)}</strong>{' '}
        <button
          type="button"
          className="button button-quiet button-small"
          onClick={() => onMapping(withSource(mapping, field, null))}
        >
          No, it says nothing
        </button>
      </label>
      <ul>
        {coloursOf(mapping, columns, fillOf ?? 'load').map(({ fill, count }) => (
          <li key={fill ?? ''}>
            <FillMark fill={fill} />
            <span className="quiet">
              {/^[0-9A-F]{6}$/.test(fill ?? '') ? `${fill}, ` : ''}
              {countOf(count, 'cell')}
            </span>
            <input
              aria-label={`${fieldTitle(field)} of ${colourName(fill)}${fill === null ? '' : ` (${fill})`}`}
              value={String((fill === null ? noFill : fills[fill]) ?? '')}
              maxLength={200}
              onChange={(event) => {
                const text = event.currentTarget.value
                const { [fill ?? '']: _before, ...others } = fills
                change(
                  fill === null
                    ? { ...source, noFill: text === '' ? null : text }
                    : { ...source, fills: text === '' ? others : { ...others, [fill]: text } },
                )
              }}
            />
          </li>
        ))}
      </ul>
      <p className="quiet">{unsaidColour}</p>
    </div>
  )
}
