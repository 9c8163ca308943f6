/** Number and sums of the samples of a mean that is not full yet. */
export type Sums = { n: number; sumT: number; sumF: number }

/** Adds samples one by one, in order, so that a mean is the same to the last bit however a stream is cut. */
export function addToSums(sums: Sums, timeS: Float64Array, force: Float64Array, from: number, to: number): void {
  let { sumT, sumF } = sums
  for (let i = from; i < to; i++) {
    sumT += timeS[i]!
    sumF += force[i]!
  }
  sums.n += to - from
  sums.sumT = sumT
  sums.sumF = sumF
}
