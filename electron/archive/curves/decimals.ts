/** Exact as doubles; the last is the largest number of decimals. */
const powersOfTen = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15]

/** 10^decimals, for 0 to 15 decimals. */
export function powerOfTen(decimals: number): number {
  const power = powersOfTen[decimals]
  if (power === undefined) throw new RangeError(`powerOfTen knows 0 to 15 decimals, not ${decimals}`)
  return power
}

/** Fifteen significant decimal digits pass through a double and back unharmed; sixteen may not. */
const largestMantissa = 1e15
/** Below this, ECMAScript writes numbers with an exponent and the plain decimal text of a reading would not be unique. */
const smallestPlain = 1e-6

/** Readings as whole numbers: reading = mantissa / 10^decimals, exactly the same double. */
export type DecimalReadings = { mantissas: Float64Array; decimals: number }

/** Finds the fewest decimals that hold every reading exactly; null when there are none and doubles must be kept as they are. */
export function decimalReadings(readings: Float64Array): DecimalReadings | null {
  let decimals = 0
  let power = 1
  for (const reading of readings) {
    if (reading !== 0 && Math.abs(reading) < smallestPlain) return null
    while (Math.round(reading * power) / power !== reading) {
      decimals += 1
      if (decimals >= powersOfTen.length) return null
      power = powerOfTen(decimals)
      if (Math.abs(reading * power) >= largestMantissa) return null
    }
  }
  const mantissas = new Float64Array(readings.length)
  for (let i = 0; i < readings.length; i++) {
    const mantissa = Math.round(readings[i]! * power)
    if (Math.abs(mantissa) >= largestMantissa || mantissa / power !== readings[i]) return null
    mantissas[i] = mantissa
  }
  return { mantissas, decimals }
}
