import type { BreakSummary } from '#contract/breaks/break.ts'
import type { ListQuery } from '#contract/listQuery.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'

/** Whether a list of specimens has a row. */
export function specimenFits(row: SpecimenSummary, { text, status }: ListQuery): boolean {
  const { number, adhesive, jointType, exposure, place, notes } = row.fields
  return (
    holds([number, adhesive, jointType, exposure, place, notes].join(' '), text) &&
    (status === 'all' || (status === 'waiting') === (row.breakInForce === null))
  )
}

/** Whether a list of breaks has a row. */
export function breakFits(row: BreakSummary, { text, status }: ListQuery): boolean {
  const wanted = status === 'all' || (status === 'set-aside' ? row.setAside !== null : row.outcome === 'break')
  return wanted && holds([row.number, row.adhesive, row.jointType, row.exposure, row.note].join(' '), text)
}

function holds(words: string, text: string): boolean {
  const low = words.toLowerCase()
  return text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => low.includes(word))
}

/** Specimens in the order of a list. */
export function sortedSpecimens(rows: SpecimenSummary[], { sort, descending }: ListQuery): SpecimenSummary[] {
  const key = (row: SpecimenSummary) =>
    sort === 'adhesive'
      ? row.fields.adhesive
      : sort === 'peakN' || sort === 'strengthMPa'
        ? String(row.breakInForce?.peakN ?? 0)
        : row.fields.number
  const order = rows.toSorted((a, b) => key(a).localeCompare(key(b), 'en', { numeric: true }))
  return descending ? order.reverse() : order
}

/** Breaks in the order of a list. */
export function sortedBreaks(rows: BreakSummary[], { sort, descending }: ListQuery): BreakSummary[] {
  const order = rows.toSorted((a, b) =>
    sort === 'peakN' ? (a.peakN ?? 0) - (b.peakN ?? 0) : a.startedAt.localeCompare(b.startedAt),
  )
  return descending ? order.reverse() : order
}

/** The page of a list that was asked for. */
export function paged<Row>(rows: readonly Row[], { offset, limit }: ListQuery): { total: number; rows: Row[] } {
  return { total: rows.length, rows: rows.slice(offset, offset + limit) }
}
