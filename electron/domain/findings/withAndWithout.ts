import { momentsOf } from '../numbers/moments.ts'
import { meanInterval } from './meanInterval.ts'
import { type Observation, type Treatment, treatedBlocks } from './observation.ts'
import { type OutlierTest, pointedOut } from './outliers.ts'

type Block = Pick<Observation, 'strengthMPa' | 'woodFailurePercent' | 'excludedBecause'>

/** Blocks that a mean rests on, and the mean with its interval, MPa. */
export type Standing = {
  readonly n: number
  readonly meanMPa: number | null
  readonly lowMPa: number | null
  readonly highMPa: number | null
}

/** One group at one age as it counts, and what it would be otherwise. */
export type WithAndWithout<One> = {
  readonly counted: Standing
  /** With the blocks that a person left out put back; null: none was left out. */
  readonly putBack: Standing | null
  /** Without the blocks that a test points out; null: it points out none. */
  readonly trimmed: Standing | null
  readonly leftOut: readonly One[]
  /** Blocks that count and lie far out, with the tests that say so and the strength that was tested, MPa. */
  readonly pointedOut: readonly { block: One; strengthMPa: number; tests: OutlierTest[] }[]
}

/**
 * A group's mean with and without the blocks that somebody left out, and with and without those that Grubbs' test or the generalised
 * ESD test points out, two-sided at 1 − confidence; nothing is removed by this.
 * Checked: tests/domain/findings/withAndWithout.spec.ts; the tests themselves in outliers.spec.ts.
 */
export function withAndWithout<One extends Block>(
  blocks: readonly One[],
  treatment: Treatment,
  confidence: number,
): WithAndWithout<One> {
  const leftOut = blocks.filter(({ excludedBecause }) => excludedBecause !== null)
  const counted = treatedBlocks(
    blocks.filter(({ excludedBecause }) => excludedBecause === null),
    treatment,
  )
  const strengths = counted.map(({ strengthMPa }) => strengthMPa)
  const far = pointedOut(strengths, 1 - confidence)
  const farBlocks = counted.flatMap((one, index) => {
    const tests = far.get(index)
    return tests === undefined ? [] : [{ ...one, tests }]
  })
  const out = new Set(farBlocks.map(({ block }) => block))
  const standing = (some: readonly { strengthMPa: number }[]) => standingOf(some, confidence)
  return {
    counted: standing(counted),
    putBack: leftOut.length === 0 ? null : standing(treatedBlocks(blocks, treatment)),
    trimmed: out.size === 0 ? null : standing(counted.filter(({ block }) => !out.has(block))),
    leftOut,
    pointedOut: farBlocks,
  }
}

function standingOf(blocks: readonly { strengthMPa: number }[], confidence: number): Standing {
  const moments = blocks.length === 0 ? null : momentsOf(blocks.map(({ strengthMPa }) => strengthMPa))
  const { mean, low, high } = meanInterval(moments, confidence)
  return { n: blocks.length, meanMPa: mean, lowMPa: low, highMPa: high }
}
