import { useState } from 'react'
import { type ImportField, type ImportMapping, importField } from '#contract/specimens/importMapping.ts'
import type { SheetColumn } from '#contract/specimens/sheetView.ts'
import { fieldTitle } from '#words/specimens/import/sheetWords.ts'
import { FieldChoice } from './FieldChoice.tsx'
import { columnIn, columnOf, valueOfBlock, withBlockValue } from './mappingDraft.ts'

/** What blocks differ in most often, offered before anything is given. */
const usual: readonly ImportField[] = ['exposure', 'ageMonths']
/** A result and a number are of one block alone, and stand in columns. */
const neverSaid: readonly ImportField[] = ['load', 'strength', 'number']

type Props = { mapping: ImportMapping; columns: readonly SheetColumn[]; onMapping(mapping: ImportMapping): void }

/** Values by which blocks side by side differ and which stand in no column, such as exposure and age in a title above. */
export function BlockValues(props: Props) {
  const { mapping } = props
  const [added, setAdded] = useState<readonly ImportField[]>([])
  const blocks = mapping.blocks ?? []
  const isGiven = (field: ImportField) => blocks.some((block) => valueOfBlock(block, field) !== '')
  const isRead = (field: ImportField) =>
    mapping.fields[field]?.column !== undefined || blocks.some((block) => columnIn(block[field]) !== undefined)
  const shown = importField.options.filter(
    (field) => isGiven(field) || added.includes(field) || (usual.includes(field) && !isRead(field)),
  )
  const free = importField.options.filter((field) => !shown.includes(field) && !neverSaid.includes(field))
  return (
    <>
      {shown.map((field) => (
        <ValuesOfField key={field} {...props} field={field} />
      ))}
      <FieldChoice
        label="Of each block besides:"
        className="import-inline"
        free={free}
        onField={(field) => setAdded([...added, field])}
      />
    </>
  )
}

function ValuesOfField({ mapping, columns, onMapping, field }: Props & { field: ImportField }) {
  const blocks = mapping.blocks ?? []
  const letters = (name: Parameters<typeof columnOf>[1] | undefined) => {
    const place = name === undefined ? null : columnOf(columns, name)
    return place === null ? null : columns[place]!.letters
  }
  const given = blocks.filter((block) => valueOfBlock(block, field) !== '').length
  return (
    <details className="import-blocks" open={given === 0 ? undefined : true}>
      <summary>
        {fieldTitle(field)} of each block ({given} of {blocks.length} given)
      </summary>
      <div className="import-options">
        {blocks.map((block, at) => {
          const measured = letters(columnIn(block.load) ?? columnIn(block.strength))
          const own = letters(columnIn(block[field]))
          const name = `Block ${at + 1}${measured === null ? '' : `, column ${measured}`}`
          return own === null ? (
            <label key={name}>
              {name}
              <input
                value={valueOfBlock(block, field)}
                maxLength={200}
                onChange={(event) => onMapping(withBlockValue(mapping, at, field, event.currentTarget.value))}
              />
            </label>
          ) : (
            <p key={name} className="quiet">
              {name}: from column {own}
            </p>
          )
        })}
      </div>
    </details>
  )
}
