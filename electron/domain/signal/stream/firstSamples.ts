/** The first samples of a stream, which are judged together. */
export type FirstSamples = {
  /** Takes samples up to the one that completes them; returns the index after the last one taken. */
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
  complete(): boolean
  count(): number
  readonly timeS: Float64Array
  readonly force: Float64Array
  readonly reading: Float64Array
}

/** So many at least, over this time, s. As many as a block of `restBlock`, since an SD of fewer is too often far too low. */
const leastSamples = 16
const leastS = 0.2
/** No more than fit. */
const mostSamples = 4096

/** None yet. Checked: tests/domain/signal/stream/firstSamples.spec.ts. */
export function createFirstSamples(): FirstSamples {
  const timeS = new Float64Array(mostSamples)
  const force = new Float64Array(mostSamples)
  const reading = new Float64Array(mostSamples)
  let count = 0

  const complete = () => count === mostSamples || (count >= leastSamples && timeS[count - 1]! - timeS[0]! >= leastS)

  return {
    take(times, forces, readings, from, to) {
      let i = from
      for (; i < to && !complete(); i++) {
        timeS[count] = times[i]!
        force[count] = forces[i]!
        reading[count] = readings[i]!
        count += 1
      }
      return i
    },
    complete,
    count: () => count,
    timeS,
    force,
    reading,
  }
}
