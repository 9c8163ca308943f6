import { type ImportField, type ImportMapping, importField } from '#contract/specimens/importMapping.ts'
import { fieldTitle } from '#words/specimens/import/sheetWords.ts'
import { withBlockValue } from './mappingDraft.ts'

/** Values by which blocks side by side differ and which stand in no column, such as the exposure in a title above. */
export function BlockValues({
  mapping,
  onMapping,
}: {
  mapping: ImportMapping
  onMapping(mapping: ImportMapping): void
}) {
  const blocks = mapping.blocks ?? []
  const givenIn = (at: number, field: ImportField) => {
    const given = blocks[at]?.[field]
    return typeof given === 'object' && given.value !== undefined ? String(given.value) : ''
  }
  const fields = importField.options.filter((field) => blocks.some((_, at) => givenIn(at, field) !== ''))
  const shown: readonly ImportField[] = fields.length === 0 ? ['exposure'] : fields
  return shown.map((field) => (
    <details key={field} className="import-blocks">
      <summary>
        {fieldTitle(field)} of each block ({blocks.filter((_, at) => givenIn(at, field) !== '').length} of{' '}
        {blocks.length} given)
      </summary>
      <div className="import-options">
        {blocks.map((block, at) => (
          <label key={`block ${at + 1} ${Object.keys(block).length}`}>
            Block {at + 1}
            <input
              value={givenIn(at, field)}
              maxLength={200}
              onChange={(event) => onMapping(withBlockValue(mapping, at, field, event.currentTarget.value))}
            />
          </label>
        ))}
      </div>
    </details>
  ))
}
