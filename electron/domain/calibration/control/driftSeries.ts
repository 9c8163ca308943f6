import type { CalibrationDrift } from '#contract/calibration/calibrationRecords.ts'

export type DriftPoint = { name: string; madeAt: string; slopePercent: number; zeroN: number }

/**
 * Slope and zero of the newest calibration and of those before it on the same device, against the first of these; oldest
 * first. A calibration without one before it begins a series of its own.
 */
export function driftSeries(drift: readonly CalibrationDrift[]): DriftPoint[] {
  const byId = new Map(drift.map((one) => [one.calibrationId, one]))
  const chain: CalibrationDrift[] = []
  for (let one = drift.at(-1); one !== undefined && !chain.includes(one); ) {
    chain.unshift(one)
    one = one.previousId === null ? undefined : byId.get(one.previousId)
  }
  const first = chain[0]
  if (first === undefined) return []
  return chain.map(({ name, madeAt, slopeN, zeroReading }) => ({
    name,
    madeAt,
    slopePercent: (slopeN / first.slopeN - 1) * 100,
    zeroN: (zeroReading - first.zeroReading) * slopeN,
  }))
}
