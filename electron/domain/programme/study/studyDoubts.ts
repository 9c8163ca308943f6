import type { StudyFields } from '#contract/programme/study.ts'
import { cellKey, cellsOf, seriesKey, seriesOf } from './cells.ts'

/** What a careful person would ask about a plan; nothing of it forbids the plan. */
export type StudyDoubt =
  | { kind: 'nothing-left' }
  | { kind: 'one-block-a-cell' }
  | { kind: 'boards-short'; give: number; need: number }
  | { kind: 'reference-unknown'; name: string }
  | { kind: 'two-ages'; ages: number }
  | { kind: 'no-start-age' }
  | { kind: 'no-spares' }
  | { kind: 'left-out-unknown'; cells: number }

/** Blocks that have to lie so many months and nobody can make again want spares. */
const longMonths = 60
/** With fewer ages than this, nothing can be said of how a strength falls. */
const fewestAges = 3

/** Doubts about a plan, the gravest first. */
export function studyDoubts(fields: StudyFields): StudyDoubt[] {
  const cells = cellsOf(fields)
  const series = seriesOf(fields)
  if (cells.length === 0) return [{ kind: 'nothing-left' }]
  const doubts: StudyDoubt[] = []
  const need = cells.length * fields.blocksPerCell + series.length * fields.sparesPerSeries
  const give = fields.boards.reduce((sum, { blocks }) => sum + blocks, 0)
  if (fields.boards.length > 0 && give < need) doubts.push({ kind: 'boards-short', give, need })
  if (fields.blocksPerCell === 1) doubts.push({ kind: 'one-block-a-cell' })
  const reference = fields.referenceAdhesive
  if (reference !== null && !fields.adhesives.includes(reference))
    doubts.push({ kind: 'reference-unknown', name: reference })
  const ages = fields.agesMonths
  if (ages.length > 1 && ages[0] !== 0) doubts.push({ kind: 'no-start-age' })
  if (ages.length > 1 && ages.length < fewestAges) doubts.push({ kind: 'two-ages', ages: ages.length })
  if (fields.sparesPerSeries === 0 && ages.at(-1)! >= longMonths) doubts.push({ kind: 'no-spares' })
  const unknown = leftOutOfNothing(fields)
  if (unknown > 0) doubts.push({ kind: 'left-out-unknown', cells: unknown })
  return doubts
}

/** How many cells are left out that the factors do not make. */
function leftOutOfNothing(fields: StudyFields): number {
  const whole = { ...fields, leftOut: [] }
  const cells = new Set(cellsOf(whole).map(cellKey))
  const series = new Set(seriesOf(whole).map(seriesKey))
  return fields.leftOut.filter(
    (one) => !(one.ageMonths === null ? series.has(seriesKey(one)) : cells.has(cellKey(one))),
  ).length
}
