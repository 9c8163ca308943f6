import { type ImportField, type ImportMapping, importField } from '#contract/specimens/importMapping.ts'
import type { SheetColumn } from '#contract/specimens/sheetView.ts'
import { fieldTitle } from '#words/specimens/import/sheetWords.ts'
import { measuredOf, type Role } from './mappingDraft.ts'

/** What a column gives, and in blocks side by side to which of them. */
export function RoleSelects({
  column,
  mapping,
  role,
  onRole,
}: {
  column: SheetColumn
  mapping: ImportMapping
  role: Role | null
  onRole(role: Role | null): void
}) {
  const { layout } = mapping
  const open = layout === 'row-per-group' ? measuredOf(mapping) : null
  const blocks = mapping.blocks?.length ?? 0
  return (
    <>
      <select
        aria-label={`Column ${column.letters} gives`}
        value={role?.field ?? ''}
        onChange={(event) => {
          const { value } = event.currentTarget
          if (value === '') onRole(null)
          else onRole({ field: value as ImportField | 'replicate', block: role?.block ?? null })
        }}
      >
        <option value="">not read</option>
        {open === null ? null : <option value="replicate">Replicate</option>}
        {importField.options
          .filter((field) => field !== open)
          .map((field) => (
            <option key={field} value={field}>
              {fieldTitle(field)}
            </option>
          ))}
      </select>
      {layout !== 'blocks' || role === null ? null : (
        <select
          aria-label={`Column ${column.letters} belongs to`}
          value={role.block ?? ''}
          onChange={(event) =>
            onRole({ ...role, block: event.currentTarget.value === '' ? null : Number(event.currentTarget.value) })
          }
        >
          <option value="">every block</option>
          {Array.from({ length: blocks + 1 }, (_, index) => (
            <option key={`block ${index + 1}`} value={index + 1}>
              {index < blocks ? `block ${index + 1}` : 'a new block'}
            </option>
          ))}
        </select>
      )}
    </>
  )
}
