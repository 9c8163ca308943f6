import { useEffect, useRef } from 'react'

/** Which rows of a long table are picked, and what the person does to that. */
export type RowSelection<Row> = {
  picked: number
  isPicked(row: Row): boolean
  onToggle(row: Row): void
  /** Picks the rows between two places, both of them too, whichever comes first. */
  onExtend(from: number, to: number): void
  /** Picks all that the list holds. */
  onAll(): void
  onNone(): void
  /** How the box of a row is named when it is read out. */
  boxLabel(row: Row): string
}

/** The box of a row. The row itself has the focus and takes Space, so the box needs no stop of its own. */
export function RowCheckbox<Row>({
  row,
  selection,
  onTick,
}: {
  row: Row | undefined
  selection: RowSelection<Row>
  onTick(withShift: boolean): void
}) {
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: keys are heard by the row
    <td className="long-table-check" onClick={(event) => event.stopPropagation()}>
      {row === undefined ? null : (
        <label>
          <input
            type="checkbox"
            tabIndex={-1}
            aria-label={selection.boxLabel(row)}
            checked={selection.isPicked(row)}
            onChange={(event) => onTick((event.nativeEvent as MouseEvent).shiftKey)}
          />
        </label>
      )}
    </td>
  )
}

/** The box in the head: all that the list holds, or none. */
export function HeadCheckbox<Row>({ selection, total }: { selection: RowSelection<Row>; total: number }) {
  const box = useRef<HTMLInputElement>(null)
  const some = selection.picked > 0
  const all = some && selection.picked >= total
  useEffect(() => {
    if (box.current !== null) box.current.indeterminate = some && !all
  }, [some, all])
  return (
    <th scope="col" className="long-table-check">
      <label>
        <input
          ref={box}
          type="checkbox"
          aria-label="Select all in the list"
          checked={all}
          disabled={total === 0}
          onChange={() => (some ? selection.onNone() : selection.onAll())}
        />
      </label>
    </th>
  )
}
