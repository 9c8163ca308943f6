import type { ImportMapping } from '#contract/specimens/importMapping.ts'
import type { SheetCell, SheetView } from '#contract/specimens/sheetView.ts'
import { FillMark } from './FillMark.tsx'
import { type Role, rolesOf, withRole } from './mappingDraft.ts'
import { RoleSelects } from './RoleSelects.tsx'

/** The first rows of a sheet; over each column stands what it gives, to be chosen. */
export function SheetTable({
  view,
  mapping,
  onMapping,
}: {
  view: SheetView
  mapping: ImportMapping
  onMapping(mapping: ImportMapping): void
}) {
  const roles = rolesOf(mapping, view.columns)
  const give = (place: number, role: Role | null) => onMapping(withRole(mapping, view.columns, place, role))
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide sheet is scrolled by keyboard
    <section className="import-sheet" aria-label="The sheet" tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">Row</span>
            </th>
            {view.columns.map((column, place) => (
              <th scope="col" key={column.letters} data-used={roles[place] === null ? undefined : ''}>
                <span className="import-column">
                  {column.letters} <span className="quiet">{column.heading}</span>
                </span>
                <RoleSelects
                  column={column}
                  mapping={mapping}
                  role={roles[place] ?? null}
                  onRole={(role) => give(place, role)}
                />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {view.rows.map(({ row, cells }) => (
            <tr key={row} data-head={row <= view.headerRow ? '' : undefined}>
              <th scope="row">{row}</th>
              {view.columns.map((column, place) => (
                <td key={column.letters} data-used={roles[place] === null ? undefined : ''}>
                  <CellWords cell={cells[place] ?? null} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** What stands in a cell, and in words what its look says. */
function CellWords({ cell }: { cell: SheetCell | null }) {
  if (cell === null) return null
  const mark = cell.formula ? 'formula' : cell.merged ? 'merged' : null
  return (
    <>
      {cell.kind === 'unstored' ? 'no stored value' : cell.text}
      {cell.fill === null ? null : <FillMark fill={cell.fill} />}
      {mark === null ? null : <span className="cell-mark">{mark}</span>}
    </>
  )
}
