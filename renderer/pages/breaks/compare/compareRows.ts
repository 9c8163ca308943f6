import type { BreakRecord } from '#contract/breaks/break.ts'
import type { ComparedCurve } from '#contract/breaks/comparison.ts'
import type { OverruledPeak } from '#contract/breaks/decision.ts'

/** One line of the table beside the curves. What is still on its way is null. */
export type CompareRow = {
  breakId: number
  name: string
  curve: ComparedCurve
  /** How it stands apart from a plain break, in words; empty for a plain one. */
  standing: string
  adhesive: string | null
  peakN: number | null
  overruled: OverruledPeak | null
  strengthMPa: number | null
  timeToPeakS: number | null
}

export type RowOrder = 'given' | 'name' | 'peak' | 'time' | 'distance'

/** From the onset of the load to the peak that counts (as found, or as a person said), s; null where either is unknown. */
export function timeToPeakS({
  evaluations,
  inForceId,
  summary,
}: Pick<BreakRecord, 'evaluations' | 'inForceId' | 'summary'>): number | null {
  const result = evaluations.find(({ evaluationId }) => evaluationId === inForceId)?.result
  const peakTimeS = summary.overruled?.timeS ?? result?.peakTimeS ?? null
  const onsetTimeS = result?.onsetTimeS ?? null
  return peakTimeS === null || onsetTimeS === null ? null : peakTimeS - onsetTimeS
}

/** Rows in another order; what is not known comes last, whichever way round. */
export function orderRows(rows: readonly CompareRow[], order: RowOrder, descending: boolean): CompareRow[] {
  if (order === 'given') return [...rows]
  if (order === 'name') {
    const byName = rows.toSorted((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }))
    return descending ? byName.reverse() : byName
  }
  const value = (row: CompareRow) =>
    order === 'peak' ? row.peakN : order === 'time' ? row.timeToPeakS : row.curve.distance
  return rows.toSorted((a, b) => {
    const [one, other] = [value(a), value(b)]
    if (one === null || other === null) return Number(one === null) - Number(other === null)
    return descending ? other - one : one - other
  })
}
