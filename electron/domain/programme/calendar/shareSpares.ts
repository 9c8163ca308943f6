import type { PullBlocks } from '#contract/programme/pullProcedures.ts'

/** A glued block that the plan keeps for no age. */
export type Spare = {
  specimenId: number
  gluedOn: string
  /** The same text for the same series. */
  series: string
  standing: 'waiting' | 'broken' | 'lost'
  /** Of which ages of its study the breaking session was in which it was broken. */
  brokenAtMonths: readonly number[]
}

/** A pull that was added to the plan, and how many spares of each series it is to have. */
export type AddedPull = { ageMonths: number; blocksPerSeries: number }

/** What a pull has of the spares: counted, and the specimens that wait. */
export type Share = { blocks: PullBlocks; waiting: readonly number[] }

/**
 * Shares the spares of a day, in the order in which they are to be broken, out to the pulls that were added, in theirs. Of each
 * series a pull has first those that were broken in a session of it, then such as wait; none goes to two pulls, and one that was
 * broken elsewhere to none. What it lacks counts as lost.
 */
export function shareSpares(spares: readonly Spare[], pulls: readonly AddedPull[]): Share[] {
  const bySeries = [...Map.groupBy(spares, ({ series }) => series).values()]
  const left = new Set(spares)
  return pulls.map(({ ageMonths, blocksPerSeries }) => {
    const taken = bySeries.flatMap((ofSeries) => {
      const free = ofSeries.filter((one) => left.has(one))
      const broken = free.filter((one) => one.standing === 'broken' && one.brokenAtMonths.includes(ageMonths))
      const waiting = free.filter((one) => one.standing === 'waiting')
      return [...broken, ...waiting].slice(0, blocksPerSeries)
    })
    for (const one of taken) left.delete(one)
    const waiting = taken.filter(({ standing }) => standing === 'waiting').map(({ specimenId }) => specimenId)
    const planned = blocksPerSeries * bySeries.length
    const broken = taken.length - waiting.length
    return { blocks: { planned, broken, waiting: waiting.length, lost: planned - taken.length }, waiting }
  })
}
