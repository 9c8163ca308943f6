import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { Steadiness } from './steadiness.ts'

/** Why a signal that may be steady is no zero: in words, and what to look at. */
export type ZeroRefusal = { because: string; advice: string }

/** What the zero of a bench can be, however steady the signal stands. */
export type ZeroBounds = {
  /** Takes samples [from, to) of arrays: times, and readings as they were received. */
  see(timeS: Float64Array, readings: Float64Array, from: number, to: number): void
  /**
   * null: nothing is against it, or the signal is not steady anyway. `capacityN`: rated load in the unit of mean and SD; null:
   * not known, or there is no force.
   */
  refusal(
    newest: Pick<Steadiness, 'mean' | 'sd' | 'swing' | 'unsteadyBecause'>,
    capacityN: number | null,
  ): ZeroRefusal | null
  /** What was seen says nothing any more. */
  reset(): void
}

/**
 * A zero beyond this share of the rated load is a load, a broken wire or a wrong scale: fixtures weigh less, and with such a
 * zero the alarm would come far too late. Common practice, no source.
 */
const mostOffsetShare = 0.5
/** With more noise SD than this share of the rated load, a loading could not start below a twentieth of it. Common practice, no source. */
const mostNoiseShare = 0.01
/**
 * What swings further than this share of the rated load is no rest: it would begin loadings, since their start threshold is as
 * low (`startCapacityShare` as it is by itself). Common practice, no source.
 */
const mostSwingShare = 0.002
/** An end code spoils what is taken within this time after it, s: the window of a zero. */
const spoiledS = 1
/** Lowest and highest codes of converters of 16, 24 and 32 bits, with a sign and without: where none is known, these are taken for ends. */
const fullScaleCodes: ReadonlySet<number> = new Set(
  [16, 24, 32].flatMap((bits) => [2 ** bits - 1, 2 ** (bits - 1) - 1, -(2 ** (bits - 1))]),
)

const wiring = 'Look at the wires of the load cell and at its amplifier'
const endOfRange: ZeroRefusal = {
  because: 'the converter stands at the end of its range',
  advice: `${wiring}: a wire is loose, or more than the cell can bear lies on it.`,
}
const tooNoisy: ZeroRefusal = {
  because: 'the readings scatter by more than 1 % of the rated load',
  advice: `${wiring}, at newtons per count and at the rated load.`,
}
const swings: ZeroRefusal = {
  because: 'the force swings to and fro',
  advice: `Keep hands off the bench and let the press stand still. If it swings by itself: ${wiring.charAt(0).toLowerCase()}${wiring.slice(1)}.`,
}
const tooFar: ZeroRefusal = {
  because: 'the zero would lie beyond half the rated load',
  advice: 'Take the load off. If nothing lies on the cell, newtons per count or the rated load is wrong.',
}

/**
 *   refused    a reading at an end code within the last second; where the codes are not known, a newest reading at full scale
 *              SD > 0.01 C      swing > 0.002 C      |mean| > 0.5 C      C rated load
 *
 * Checked: tests/domain/signal/rest/zeroBounds.spec.ts.
 */
export function createZeroBounds({ endCodes }: Pick<DetectionSettings, 'endCodes'>): ZeroBounds {
  const [lowest, highest] = endCodes ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  const state = { nowS: 0, endS: Number.NEGATIVE_INFINITY }
  return {
    see(timeS, readings, from, to) {
      if (from >= to) return
      for (let i = from; i < to; i++) if (readings[i]! <= lowest || readings[i]! >= highest) state.endS = timeS[i]!
      state.nowS = timeS[to - 1]!
      if (endCodes === null) state.endS = fullScaleCodes.has(readings[to - 1]!) ? state.nowS : Number.NEGATIVE_INFINITY
    },
    refusal({ mean, sd, swing, unsteadyBecause }, capacityN) {
      if (state.nowS - state.endS <= spoiledS) return endOfRange
      if (unsteadyBecause !== null || capacityN === null || mean === null || sd === null || swing === null) return null
      if (sd > mostNoiseShare * capacityN) return tooNoisy
      if (swing > mostSwingShare * capacityN) return swings
      return Math.abs(mean) > mostOffsetShare * capacityN ? tooFar : null
    },
    reset() {
      state.endS = Number.NEGATIVE_INFINITY
    },
  }
}
