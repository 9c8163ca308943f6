import { createGlitchFilter } from './glitchFilter.ts'

/** What of a stream can be load: its lowest and highest force. */
export type LoadRange = {
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): void
  /** Noise SD, in the unit of the force. */
  setNoise(noise: number): void
  /** Lowest and highest since this was last asked; null: nothing that can be load came. */
  since(): [lowest: number, highest: number] | null
  /** The newest that can be load; null before the first. */
  latest(): number | null
}

/**
 * Leaves out lone electrical glitches by the rules that keep them from being a peak (glitchFilter.ts); a sample that is
 * suspect counts once those that follow have cleared it. Constant memory.
 * Checked: tests/domain/signal/stream/loadRange.spec.ts.
 */
export function createLoadRange(): LoadRange {
  const state = { lowest: Number.POSITIVE_INFINITY, highest: Number.NEGATIVE_INFINITY, latest: Number.NaN }
  const filter = createGlitchFilter({
    accept: (_timeS, force, _reading, from, to) => count(force, from, to),
    glitch() {},
  })

  function count(force: Float64Array, from: number, to: number): void {
    let { lowest, highest } = state
    for (let i = from; i < to; i++) {
      lowest = Math.min(lowest, force[i]!)
      highest = Math.max(highest, force[i]!)
    }
    state.lowest = lowest
    state.highest = highest
    if (to > from) state.latest = force[to - 1]!
  }

  return {
    take(timeS, force, from, to) {
      for (let i = from; i < to; ) {
        const good = filter.goodUntil(force, i, to)
        count(force, i, good)
        if (good < to) filter.question(timeS, force, force, good)
        i = good + 1
      }
    },
    setNoise: filter.setNoise,
    since() {
      const { lowest, highest } = state
      state.lowest = Number.POSITIVE_INFINITY
      state.highest = Number.NEGATIVE_INFINITY
      return lowest <= highest ? [lowest, highest] : null
    },
    latest: () => (Number.isNaN(state.latest) ? null : state.latest),
  }
}
