import { detectableDifference } from '../sampleSize.ts'

/** What became of the blocks of one age of a series, which is an adhesive x joint x gap x exposure. */
export type CellStock = {
  ageMonths: number
  planned: number
  /** Whole on the shelf. */
  waiting: number
  broken: number
  /** Withdrawn, or never glued though their glue-up is done. */
  lost: number
  /** The pull was missed or skipped: blocks that wait for it are free for other ages. */
  closed: boolean
}

/** An age that is still to come or under way: how many blocks it will have, and what they can show. */
export type CellOutlook = {
  ageMonths: number
  planned: number
  /** Waiting or broken for this very age. */
  atHand: number
  /** Taken from spares and from the blocks of closed ages. */
  filled: number
  /** At hand and filled. */
  blocks: number
  /** Smallest difference of two groups that is found, in percent of the mean, as planned and as it stands; null: none is. */
  detectableAsPlannedPercent: number | null
  detectablePercent: number | null
}

/** What is asked of a comparison; in percent and probabilities. `cvPercent` null: nothing is known of the spread. */
export type ComparisonWanted = { cvPercent: number | null; confidence: number; power: number }

/**
 * What lost blocks and closed pulls mean for the ages of a series that are not closed, in order of age: whole blocks of closed
 * ages and spares fill what is short, earliest age first. `free`: how many are left of them after that.
 */
export function seriesOutlook(
  cells: readonly CellStock[],
  sparesWaiting: number,
  wanted: ComparisonWanted,
): { ages: CellOutlook[]; free: number } {
  let free = sparesWaiting + cells.reduce((sum, { closed, waiting }) => sum + (closed ? waiting : 0), 0)
  const open = cells.filter(({ closed }) => !closed).sort((a, b) => a.ageMonths - b.ageMonths)
  const ages = open.map(({ ageMonths, planned, waiting, broken }) => {
    const atHand = waiting + broken
    const filled = Math.min(free, Math.max(0, planned - atHand))
    free -= filled
    const blocks = atHand + filled
    return {
      ageMonths,
      planned,
      atHand,
      filled,
      blocks,
      detectableAsPlannedPercent: detectablePercent(planned, wanted),
      detectablePercent: detectablePercent(blocks, wanted),
    }
  })
  return { ages, free }
}

/** Two groups of so many blocks, by a two-sided t test. */
function detectablePercent(blocks: number, { cvPercent, confidence, power }: ComparisonWanted): number | null {
  if (blocks < 2 || cvPercent === null) return null
  const sds = detectableDifference({ comparison: 'pair', groups: 2, confidence }, blocks, power)
  return sds === null ? null : sds * cvPercent
}
