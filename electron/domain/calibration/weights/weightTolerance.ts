import type { OimlClass, Weight } from '#contract/calibration/weight.ts'
import { Trouble } from '#contract/errors.ts'

/** Columns of the table below, left to right; null: the class has no weight of that size in it. */
const classes: readonly OimlClass[] = ['F1', 'F2', 'M1', 'M2', 'M3']

/** Maximum permissible errors in mg by nominal value in g: OIML R 111-1:2004, Table 1. */
const permissibleErrorMg: ReadonlyMap<number, readonly (number | null)[]> = new Map([
  [5_000_000, [null, null, 250_000, 800_000, 2_500_000]],
  [2_000_000, [null, null, 100_000, 300_000, 1_000_000]],
  [1_000_000, [null, null, 50_000, 160_000, 500_000]],
  [500_000, [null, null, 25_000, 80_000, 250_000]],
  [200_000, [null, null, 10_000, 30_000, 100_000]],
  [100_000, [null, null, 5000, 16_000, 50_000]],
  [50_000, [250, 800, 2500, 8000, 25_000]],
  [20_000, [100, 300, 1000, 3000, 10_000]],
  [10_000, [50, 160, 500, 1600, 5000]],
  [5000, [25, 80, 250, 800, 2500]],
  [2000, [10, 30, 100, 300, 1000]],
  [1000, [5, 16, 50, 160, 500]],
  [500, [2.5, 8, 25, 80, 250]],
  [200, [1, 3, 10, 30, 100]],
  [100, [0.5, 1.6, 5, 16, 50]],
  [50, [0.3, 1, 3, 10, 30]],
  [20, [0.25, 0.8, 2.5, 8, 25]],
  [10, [0.2, 0.6, 2, 6, 20]],
  [5, [0.16, 0.5, 1.6, 5, 16]],
  [2, [0.12, 0.4, 1.2, 4, 12]],
  [1, [0.1, 0.3, 1, 3, 10]],
])

/**
 * Maximum permissible error of a weight in kg (its half-width), by nominal value in kg and class.
 *
 * Throws Trouble for a nominal value or a class that the table does not have.
 * Source: OIML R 111-1:2004, Table 1. Checked: tests/domain/calibration/weights/weightTolerance.spec.ts.
 */
export function permissibleErrorKg(nominalKg: number, oimlClass: OimlClass): number {
  const row = [...permissibleErrorMg].find(([grams]) => Math.abs(nominalKg * 1000 - grams) <= 1e-6 * grams)?.[1]
  const errorMg = row?.[classes.indexOf(oimlClass)] ?? null
  if (errorMg === null)
    throw new Trouble(
      'invalid-input',
      `OIML R 111 has no limit for a weight of ${nominalKg} kg in class ${oimlClass}.`,
      'Choose the nominal value and class marked on the weight, or give its tolerance yourself.',
    )
  return errorMg / 1e6
}

/** Half-width in kg of what is believed of a weight's mass: by its class, or as its owner states. */
export function weightHalfWidthKg(weight: Pick<Weight, 'nominalKg' | 'tolerance'>): number {
  const { tolerance } = weight
  return tolerance.kind === 'own' ? tolerance.halfWidthKg : permissibleErrorKg(weight.nominalKg, tolerance.class)
}

/** The limit of a weight's class in kg; null where OIML R 111 has none for its mass. */
export function classHalfWidthKg(weight: Pick<Weight, 'nominalKg' | 'tolerance'>): number | null {
  try {
    return weightHalfWidthKg(weight)
  } catch {
    return null
  }
}
