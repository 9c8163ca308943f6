/**
 * How a load cell with its amplifier turns force into converter counts.
 * curvature: departure from the straight line at capacity, as a share of capacity (parabola, zero at zero and capacity).
 * hysteresis: widest difference between falling and rising branch, as a share of the highest force since zero.
 */
export type Characteristic = {
  zeroCounts: number
  nPerCount: number
  capacityN: number
  curvature: number
  hysteresis: number
}

export const straightCharacteristic: Characteristic = {
  zeroCounts: 48_213,
  nPerCount: 0.01,
  capacityN: 25_000,
  curvature: 0,
  hysteresis: 0,
}

/** A cell as cheap ones are: bent by 0.08 % of capacity and 0.05 % wide between rising and falling load. */
export const curvedCharacteristic: Characteristic = { ...straightCharacteristic, curvature: 0.0008, hysteresis: 0.0005 }

/**
 * Reading in counts (not yet rounded) of a force in N, when `highestN` is the highest force since the cell was last free.
 *
 *   reading = zero + [ F + c (F/C) (1 − F/C) · 4C + h (F/M) (1 − F/M) · 4M ] / s
 *   c curvature, C capacity N, h hysteresis on the falling branch (F < M), M highest force N, s N per count
 */
export function readingCounts(characteristic: Characteristic, forceN: number, highestN: number): number {
  const { zeroCounts, nPerCount, capacityN, curvature, hysteresis } = characteristic
  let indicatedN = forceN
  if (curvature !== 0) indicatedN += 4 * curvature * forceN * (1 - forceN / capacityN)
  if (hysteresis !== 0 && forceN > 0 && forceN < highestN)
    indicatedN += 4 * hysteresis * forceN * (1 - forceN / highestN)
  return zeroCounts + indicatedN / nPerCount
}
