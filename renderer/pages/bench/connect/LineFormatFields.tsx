import { useState } from 'react'
import { type ColumnName, columnName, type LineFormatChoice, lineFormatName } from '#contract/bench/source.ts'
import { lineFormatWords, lineFormatWorth } from '#words/bench/lineFormatWords.ts'
import { Field, SelectField } from '../../../widgets/Field.tsx'

const known = columnName.options

/** How a line is read; columns are named from left to right. */
export function LineFormatFields({
  value,
  onChange,
}: {
  value: LineFormatChoice
  onChange(choice: LineFormatChoice): void
}) {
  const [typed, setTyped] = useState<string | null>(null)
  const text = typed ?? value.columns.join(', ')
  const unknown = text.split(/[\s,]+/).filter((word) => word !== '' && !known.includes(word as ColumnName))
  return (
    <>
      <SelectField
        label="Line format"
        value={value.name}
        hint={lineFormatWorth(value.name)}
        onChange={(event) => {
          const name = lineFormatName.parse(event.currentTarget.value)
          setTyped(null)
          onChange({ name, columns: name === 'columns' ? (['time_us', 'counts'] satisfies ColumnName[]) : [] })
        }}
      >
        {lineFormatName.options.map((name) => (
          <option key={name} value={name}>
            {lineFormatWords({ name, columns: [] })}
          </option>
        ))}
      </SelectField>
      {value.name !== 'columns' ? null : (
        <Field
          label="Columns from left to right"
          value={text}
          onChange={(event) => {
            const next = event.currentTarget.value
            setTyped(next)
            const words = next.split(/[\s,]+/).filter((word): word is ColumnName => known.includes(word as ColumnName))
            onChange({ name: 'columns', columns: words })
          }}
          error={unknown.length === 0 ? null : `“${unknown[0]}” is no column name.`}
          hint={`${known.slice(0, -1).join(', ')}; - skips one`}
        />
      )}
    </>
  )
}
