import { dot } from '../../numbers/matrices/dot.ts'

export const ageingModelNames = ['constant', 'linear', 'log-time', 'square-root-time', 'exponential-approach'] as const
export type AgeingModelName = (typeof ageingModelNames)[number]

/** Names of the parameters of a model, in the order of its columns; tauMonths comes last where there is one. */
export const parameterNames: Record<AgeingModelName, readonly string[]> = {
  constant: ['startMPa'],
  linear: ['startMPa', 'slopeMPaPerMonth'],
  'log-time': ['startMPa', 'slopeMPaPerMonth'],
  'square-root-time': ['startMPa', 'slopeMPaPerMonth'],
  'exponential-approach': ['startMPa', 'endMPa', 'tauMonths'],
}

/**
 * What the linear parameters of a model are multiplied with at an age t in months; for the exponential approach with a time
 * constant τ.
 *
 *   constant a; linear a + bt; log-time a + b ln(1 + t); square-root-time a + b√t; exponential approach a e^(−t/τ) + e(1 − e^(−t/τ))
 *
 * Checked: tests/domain/findings/ageing/ageingModels.spec.ts.
 */
export function designRow(model: AgeingModelName, ageMonths: number, tauMonths: number): number[] {
  switch (model) {
    case 'constant':
      return [1]
    case 'linear':
      return [1, ageMonths]
    case 'log-time':
      return [1, Math.log1p(ageMonths)]
    case 'square-root-time':
      return [1, Math.sqrt(ageMonths)]
    case 'exponential-approach': {
      const left = Math.exp(-ageMonths / tauMonths)
      return [left, 1 - left]
    }
  }
}

/** Derivatives of the mean at an age by all parameters of the model. Checked: tests/domain/findings/ageing/ageingModels.spec.ts. */
export function gradientRow(model: AgeingModelName, ageMonths: number, parameters: readonly number[]): number[] {
  const [start, end, tau] = parameters
  const row = designRow(model, ageMonths, tau ?? Number.NaN)
  if (model !== 'exponential-approach') return row
  return [...row, ((start! - end!) * row[0]! * ageMonths) / (tau! * tau!)]
}

/** Mean strength at an age, MPa. */
export function meanAt(model: AgeingModelName, ageMonths: number, parameters: readonly number[]): number {
  const row = designRow(model, ageMonths, parameters[2] ?? Number.NaN)
  return dot(row, parameters)
}
