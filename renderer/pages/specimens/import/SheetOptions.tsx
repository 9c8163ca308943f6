import type { Delimiter, ImportMapping } from '#contract/specimens/importMapping.ts'
import type { SheetView } from '#contract/specimens/sheetView.ts'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import type { Said } from './useImportFile.ts'

const delimiters: Readonly<Record<Delimiter, string>> = { ',': 'comma', ';': 'semicolon', '\t': 'tab' }
const encodings = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252', 'windows-1250', 'iso-8859-15', 'macintosh'] as const

/** What of a file is read and how: which sheet, where its headings stand, how a file of text is written. */
export function SheetOptions({
  view,
  mapping,
  onLook,
  onMapping,
}: {
  view: SheetView
  mapping: ImportMapping
  onLook(change: Partial<Said>): void
  onMapping(mapping: ImportMapping): void
}) {
  return (
    <div className="import-options">
      {view.sheets.length < 2 ? null : (
        <SelectField
          label="Sheet"
          value={view.sheet ?? ''}
          onChange={(event) => onLook({ sheet: event.currentTarget.value, headerRow: null })}
        >
          {view.sheets.map(({ name, hidden }) => (
            <option key={name} value={name}>
              {hidden ? `${name} (hidden)` : name}
            </option>
          ))}
        </SelectField>
      )}
      <Field
        label="Headings in row (0: none)"
        inputMode="numeric"
        key={view.headerRow}
        defaultValue={view.headerRow}
        onBlur={(event) => {
          const text = event.currentTarget.value.trim()
          const row = Number(text)
          if (/^\d{1,5}$/.test(text) && row <= 10_000 && row !== view.headerRow) onLook({ headerRow: row })
          else event.currentTarget.value = String(view.headerRow)
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur()
        }}
      />
      <SelectField
        label="Decimal sign"
        value={mapping.decimal ?? ''}
        onChange={(event) => {
          const { decimal: _before, ...others } = mapping
          const sign = event.currentTarget.value
          onMapping(sign === '.' || sign === ',' ? { ...others, decimal: sign } : others)
        }}
      >
        <option value="">as the file shows</option>
        <option value=".">point</option>
        <option value=",">comma</option>
      </SelectField>
      {view.text === null ? null : <TextOptions text={view.text} onLook={onLook} />}
    </div>
  )
}

/** How a file of text is written. */
function TextOptions({ text, onLook }: { text: NonNullable<SheetView['text']>; onLook(change: Partial<Said>): void }) {
  return (
    <>
      <SelectField
        label="Between the fields"
        value={text.delimiter}
        onChange={(event) => onLook({ delimiter: event.currentTarget.value as Delimiter, headerRow: null })}
      >
        {Object.entries(delimiters).map(([sign, name]) => (
          <option key={sign} value={sign}>
            {name}
          </option>
        ))}
      </SelectField>
      <SelectField
        label="Characters"
        value={text.encoding}
        onChange={(event) => onLook({ encoding: event.currentTarget.value as (typeof encodings)[number] })}
      >
        {encodings.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </SelectField>
    </>
  )
}
