import { medianOfSorted } from '../../numbers/quantile.ts'

/** The newest few values of a series, for their median. */
export type NewestValues = { push(value: number): void; count(): number; median(): number; clear(): void }

/** Keeps so many; allocates nothing afterwards. The median of none is NaN. Checked: tests/domain/signal/rest/newestValues.spec.ts. */
export function createNewestValues(most: number): NewestValues {
  const values = new Float64Array(most)
  const sorted = new Float64Array(most)
  let pushed = 0
  const count = () => Math.min(pushed, most)
  return {
    push(value) {
      values[pushed % most] = value
      pushed += 1
    },
    count,
    median() {
      sorted.set(values)
      return medianOfSorted(sorted.subarray(0, count()).sort())
    },
    clear() {
      pushed = 0
    },
  }
}
