// Held by tests/browser/breaks/selectBreaks.spec.ts.
import { useCallback, useMemo, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { RowSelection } from '../../widgets/tables/RowSelection.tsx'
import type { Selection } from './selectionStore.ts'

export type PickedRows<Row> = {
  rows: RowSelection<Row>
  ids: readonly number[]
  error: TroubleMessage | null
}

/** Rows picked in a list. What is not in sight is asked for by number alone, so that ten thousand rows are no trouble. */
export function useRowSelection<Row>({
  selection,
  rowAt,
  idOf,
  askIds,
  boxLabel,
}: {
  selection: Selection
  rowAt(index: number): Row | undefined
  idOf(row: Row): number
  /** The numbers of all that the list holds, in its order. */
  askIds(): Promise<readonly number[]>
  boxLabel(row: Row): string
}): PickedRows<Row> {
  const ids = selection.use()
  const picked = useMemo(() => new Set(ids), [ids])
  const [error, setError] = useState<TroubleMessage | null>(null)

  /** Adds what lies between two places of the list. */
  const add = useCallback(
    async (from: number, to: number) => {
      try {
        setError(null)
        const there = idsInSight(rowAt, idOf, from, to) ?? (await askIds()).slice(from, to + 1)
        selection.set([...selection.read(), ...there])
      } catch (thrown) {
        setError(troubleFrom(thrown))
      }
    },
    [selection, rowAt, idOf, askIds],
  )

  return {
    ids,
    error,
    rows: {
      picked: ids.length,
      isPicked: (row) => picked.has(idOf(row)),
      onToggle: (row) =>
        selection.set(picked.has(idOf(row)) ? ids.filter((one) => one !== idOf(row)) : [...ids, idOf(row)]),
      onExtend: (from, to) => void add(Math.min(from, to), Math.max(from, to)),
      onAll: () => void add(0, Number.MAX_SAFE_INTEGER - 1),
      onNone: () => selection.set([]),
      boxLabel,
    },
  }
}

/** The numbers of the rows from one place to another, if all of them are here; null if some are not, or there are many. */
function idsInSight<Row>(
  rowAt: (index: number) => Row | undefined,
  idOf: (row: Row) => number,
  from: number,
  to: number,
): number[] | null {
  if (to - from > 500) return null
  const ids: number[] = []
  for (let index = from; index <= to; index++) {
    const row = rowAt(index)
    if (row === undefined) return null
    ids.push(idOf(row))
  }
  return ids
}
