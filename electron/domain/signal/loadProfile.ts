import { addToSums } from './sums.ts'

/** A loading from its onset as at most 256 means of equal count, in constant memory. */
export type LoadProfile = {
  push(timeS: number, force: number): void
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): void
  clear(): void
  /** Means up to a time; the arrays are the profile's own and hold until the next push. */
  until(timeS: number): { timeS: Float64Array; force: Float64Array }
  /** Time of the first mean at or above a force; of the newest when none is. */
  firstReachedS(force: number): number
}

const capacity = 256

/**
 * Keeps means of 1, 2, 4, ... samples: whenever the arrays are full, neighbours are joined and the stride doubles.
 * Checked: tests/domain/signal/loadProfile.spec.ts.
 */
export function createLoadProfile(): LoadProfile {
  const times = new Float64Array(capacity)
  const forces = new Float64Array(capacity)
  const state = { used: 0, stride: 1, n: 0, sumT: 0, sumF: 0 }

  function push(timeS: number, force: number): void {
    state.n += 1
    state.sumT += timeS
    state.sumF += force
    if (state.n === state.stride) endMean()
  }

  function take(timeS: Float64Array, force: Float64Array, from: number, to: number): void {
    for (let i = from; i < to; ) {
      const end = Math.min(to, i + state.stride - state.n)
      addToSums(state, timeS, force, i, end)
      i = end
      if (state.n === state.stride) endMean()
    }
  }

  function endMean(): void {
    times[state.used] = state.sumT / state.n
    forces[state.used] = state.sumF / state.n
    state.used += 1
    state.n = 0
    state.sumT = 0
    state.sumF = 0
    if (state.used === capacity) halve()
  }

  function halve(): void {
    for (let i = 0; i < capacity / 2; i++) {
      times[i] = (times[2 * i]! + times[2 * i + 1]!) / 2
      forces[i] = (forces[2 * i]! + forces[2 * i + 1]!) / 2
    }
    state.used = capacity / 2
    state.stride *= 2
  }

  function clear(): void {
    state.used = 0
    state.stride = 1
    state.n = 0
    state.sumT = 0
    state.sumF = 0
  }

  return {
    push,
    take,
    clear,
    until(timeS) {
      let count = 0
      while (count < state.used && times[count]! <= timeS) count += 1
      return { timeS: times.subarray(0, count), force: forces.subarray(0, count) }
    },
    firstReachedS(force) {
      for (let i = 0; i < state.used; i++) if (forces[i]! >= force) return times[i]!
      return state.n > 0 ? state.sumT / state.n : (times[state.used - 1] ?? Number.NaN)
    },
  }
}
