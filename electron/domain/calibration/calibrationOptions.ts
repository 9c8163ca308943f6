import type { Degree } from './fit/polynomialFit.ts'

/** How rows are to be judged. Shares are half-widths over the force; null: not known, and then left out of the budget. */
export type CalibrationOptions = {
  /** null: the degree that is proposed. */
  readonly degree: Degree | null
  readonly throughZero: boolean
  /** up: only readings with increasing force enter the fit, as a break is found on rising load. */
  readonly fitOver: 'all' | 'up'
  /** The person has agreed that the reading falls while the force rises. Coefficients stay those of the reading as it is. */
  readonly invertedAccepted: boolean
  readonly capacityN: number | null
  /** In the unit of the reading. */
  readonly resolution: number | null
  readonly weightsShare: number | null
  readonly buoyancyShare: number | null
  readonly leverShare: number | null
  readonly gravityShare: number | null
  readonly creepShare: number | null
}

export const defaultCalibrationOptions: CalibrationOptions = {
  degree: null,
  throughZero: false,
  fitOver: 'all',
  invertedAccepted: false,
  capacityN: null,
  resolution: null,
  weightsShare: null,
  buoyancyShare: null,
  leverShare: null,
  gravityShare: null,
  creepShare: null,
}
