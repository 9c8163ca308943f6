import type { GroupValues } from '#domain/findings/compare/groupValues.ts'
import type { Observation } from '#domain/findings/observation.ts'

/** Groups named 1, 2, ... of given values. */
export function groupsOf(...values: number[][]): GroupValues[] {
  return values.map((one, i) => ({ group: String(i + 1), values: Float64Array.from(one) }))
}

/** NIST/SEMATECH e-Handbook 7.4.7.1. */
export const handbookGroups = groupsOf(
  [6.9, 5.4, 5.8, 4.6, 4.0],
  [8.3, 6.8, 7.8, 9.2, 6.5],
  [8.0, 10.5, 8.1, 6.9, 9.3],
  [5.8, 3.8, 6.1, 5.6, 6.2],
)

/** NIST/SEMATECH e-Handbook 1.3.5.7: diameters of gears, ten batches. */
export const gears = groupsOf(
  [1.006, 0.996, 0.998, 1.0, 0.992, 0.993, 1.002, 0.999, 0.994, 1.0],
  [0.998, 1.006, 1.0, 1.002, 0.997, 0.998, 0.996, 1.0, 1.006, 0.988],
  [0.991, 0.987, 0.997, 0.999, 0.995, 0.994, 1.0, 0.999, 0.996, 0.996],
  [1.005, 1.002, 0.994, 1.0, 0.995, 0.994, 0.998, 0.996, 1.002, 0.996],
  [0.998, 0.998, 0.982, 0.99, 1.002, 0.984, 0.996, 0.993, 0.98, 0.996],
  [1.009, 1.013, 1.009, 0.997, 0.988, 1.002, 0.995, 0.998, 0.981, 0.996],
  [0.99, 1.004, 0.996, 1.001, 0.998, 1.0, 1.018, 1.01, 0.996, 1.002],
  [0.998, 1.0, 1.006, 1.0, 1.002, 0.996, 0.998, 0.996, 1.002, 1.006],
  [1.002, 0.998, 0.996, 0.995, 0.996, 1.004, 1.004, 0.998, 0.999, 0.991],
  [0.991, 0.995, 0.984, 0.994, 0.997, 0.997, 0.991, 0.998, 1.004, 0.997],
)

/** Student's sleep data, as R has them. */
export const sleep = groupsOf(
  [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0],
  [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4],
)

/** A block as the statistics see it. */
export function block(given: Partial<Observation> & { strengthMPa: number }): Observation {
  return {
    group: 'G',
    ageMonths: null,
    specimen: null,
    woodFailurePercent: null,
    board: null,
    excludedBecause: null,
    simulated: false,
    ...given,
  }
}
