import type { ListFilter } from '#contract/listQuery.ts'
import type { CatalogueKind } from '#contract/programme/catalogue.ts'
import { naturalKey } from '#domain/text/naturalOrder.ts'

/** Conditions on the rows of a list in SQL, each with AND before it, and the values for their places. */
export type FilterCondition = { condition: string; values: (string | number)[] }

type NamedFactor = 'adhesive' | 'lot' | 'wood' | 'board' | 'jointType' | 'exposure' | 'place'

const kinds: Readonly<Record<NamedFactor, CatalogueKind>> = {
  adhesive: 'adhesive',
  lot: 'lot',
  wood: 'wood',
  board: 'board',
  jointType: 'joint-type',
  exposure: 'exposure',
  place: 'place',
}

/** Every entry that a name stands for after all merges; lots of several adhesives may have the same one. */
const entriesNamed = `SELECT c.into_entry_id FROM catalogue_name n JOIN catalogue_current c ON c.entry_id = n.entry_id
    WHERE n.kind = ? AND n.name_key = ?`

const bounds = [
  ['gapLeastMm', 's.gap_mm >= ?'],
  ['gapMostMm', 's.gap_mm <= ?'],
  ['ageLeastMonths', 's.age_months >= ?'],
  ['ageMostMonths', 's.age_months <= ?'],
  ['studyId', 's.study_id = ?'],
] as const

/** What a filter asks of the row `s` of specimen_current. */
export function filterCondition(filter: ListFilter): FilterCondition {
  const conditions: string[] = []
  const values: (string | number)[] = []
  for (const [factor, kind] of Object.entries(kinds) as [NamedFactor, CatalogueKind][]) {
    if (filter[factor] === '') continue
    conditions.push(`s.${kind.replace('-', '_')}_id IN (${entriesNamed})`)
    values.push(kind, naturalKey(filter[factor]))
  }
  for (const [factor, condition] of bounds) {
    const value = filter[factor]
    if (value === null) continue
    conditions.push(condition)
    values.push(value)
  }
  return { condition: conditions.map((one) => `AND ${one}`).join(' '), values }
}
