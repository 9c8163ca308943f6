import { shiftToFind } from '../../numbers/distributions/shiftToFind.ts'
import { onceForEach } from '../../numbers/onceForEach.ts'

/** Blocks of one series that are broken at an age: those that were, and those that are still to be. */
export type PlannedPull = { readonly ageMonths: number; readonly blocks: number; readonly isDone: boolean }

/** What can be seen once the pull at that age is done: the smallest change a year, and over the years so far, in percent of the start. */
export type Sight = {
  readonly ageMonths: number
  readonly changePercentPerYear: number
  readonly changePercent: number
}

/** A pull whose blocks would say more later. */
export type Move = {
  readonly fromMonths: number
  readonly toMonths: number
  readonly blocks: number
  /** Smallest change a year that all pulls together show, as planned and with the move, percent of the start. */
  readonly beforePercentPerYear: number
  readonly afterPercentPerYear: number
}

/** How surely a change is to be told from none. */
export type Certainty = { readonly confidence: number; readonly power: number }

/** The many moves of a shelf have few different numbers of blocks. */
const knownShift = onceForEach(shiftToFind)

/** Smallest slope that a line through these blocks tells from none; null for fewer than three blocks or one age. */
function slopeToSee(
  pulls: readonly Omit<PlannedPull, 'isDone'>[],
  cvPercent: number,
  { confidence, power }: Certainty,
): number | null {
  const n = pulls.reduce((sum, { blocks }) => sum + blocks, 0)
  if (n < 3) return null
  const mean = pulls.reduce((sum, { ageMonths, blocks }) => sum + blocks * ageMonths, 0) / n
  const spread = pulls.reduce((sum, { ageMonths, blocks }) => sum + blocks * ((ageMonths - mean) / 12) ** 2, 0)
  return spread > 0 ? (knownShift(n - 2, confidence, power) * cvPercent) / Math.sqrt(spread) : null
}

/**
 * What the pulls of a series can show, one after the other: the slope of a straight line against age that a two-sided test finds
 * with that power, where single blocks spread by `cvPercent` of the start. Pulls by rising age; those that show nothing yet are left out.
 *
 *   slope = δ CV/√Σ nⱼ (tⱼ − t̄)²,  δ = shiftToFind with Σ nⱼ − 2 degrees of freedom
 *
 * Source: Draper and Smith, Applied Regression Analysis, 1.4 (from memory). Checked: tests/domain/findings/ageing/shelf.spec.ts against R.
 */
export function sightOf(pulls: readonly PlannedPull[], cvPercent: number, certainty: Certainty): Sight[] {
  const filled = pulls.filter(({ blocks }) => blocks > 0)
  return filled.flatMap(({ ageMonths }, i) => {
    const slope = slopeToSee(filled.slice(0, i + 1), cvPercent, certainty)
    if (slope === null) return []
    return [
      { ageMonths, changePercentPerYear: slope, changePercent: (slope * (ageMonths - filled[0]!.ageMonths)) / 12 },
    ]
  })
}

/** Age at which the pulls show a slope of that size, percent of the start a year; null: with none of them. */
export function seenAt(
  pulls: readonly PlannedPull[],
  cvPercent: number,
  certainty: Certainty,
  percentPerYear: number,
): number | null {
  const seen = sightOf(pulls, cvPercent, certainty).find((sight) => sight.changePercentPerYear <= percentPerYear)
  return seen?.ageMonths ?? null
}

/** Every way to bring the blocks of one pull to come, all but `least`, to a later one. */
function* movesOf(pulls: readonly PlannedPull[], least: number) {
  for (const from of pulls)
    for (const to of pulls) {
      const blocks = from.blocks - least
      if (from.isDone || to.isDone || to.ageMonths <= from.ageMonths || blocks < 1) continue
      const moved = pulls.map((pull) => {
        if (pull === from) return { ...pull, blocks: least }
        return pull === to ? { ...pull, blocks: pull.blocks + blocks } : pull
      })
      yield { fromMonths: from.ageMonths, toMonths: to.ageMonths, blocks, moved }
    }
}

/**
 * The move of blocks from one pull to come to a later one that makes the smallest visible slope smallest; null where none does. A
 * pull keeps `least` blocks. Checked: tests/domain/findings/ageing/shelf.spec.ts.
 */
export function bestMove(
  pulls: readonly PlannedPull[],
  cvPercent: number,
  certainty: Certainty,
  least: number,
): Move | null {
  const before = slopeToSee(pulls, cvPercent, certainty)
  if (before === null) return null
  let best: Move | null = null
  for (const { moved, ...move } of movesOf(pulls, least)) {
    const after = slopeToSee(moved, cvPercent, certainty)
    if (after !== null && after < (best?.afterPercentPerYear ?? before) * (1 - 1e-9))
      best = { ...move, beforePercentPerYear: before, afterPercentPerYear: after }
  }
  return best
}

/**
 * The move that shows a slope of that size soonest, of equals the one with the sharpest end; null where none shows it sooner than the
 * pulls as they are planned. Checked: tests/domain/findings/ageing/shelf.spec.ts.
 */
export function soonestMove(
  pulls: readonly PlannedPull[],
  cvPercent: number,
  certainty: Certainty,
  { least, percentPerYear }: { least: number; percentPerYear: number },
): (Move & { seenMonths: number }) | null {
  const before = slopeToSee(pulls, cvPercent, certainty)
  if (before === null) return null
  let soonest = seenAt(pulls, cvPercent, certainty, percentPerYear) ?? Number.POSITIVE_INFINITY
  let best: (Move & { seenMonths: number }) | null = null
  for (const { moved, ...move } of movesOf(pulls, least)) {
    const seenMonths = seenAt(moved, cvPercent, certainty, percentPerYear)
    const after = slopeToSee(moved, cvPercent, certainty)
    if (seenMonths === null || after === null || seenMonths > soonest) continue
    if (seenMonths === soonest && (best === null || after >= best.afterPercentPerYear)) continue
    soonest = seenMonths
    best = { ...move, seenMonths, beforePercentPerYear: before, afterPercentPerYear: after }
  }
  return best
}
