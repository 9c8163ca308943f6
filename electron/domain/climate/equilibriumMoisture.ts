/** Temperatures for which the equation was made, degrees Celsius. */
export const moistureRangeC = { from: -1.1, to: 130 } as const

/**
 * Moisture that wood comes to in air of a temperature (degrees Celsius) and relative humidity (percent), percent of dry mass; null
 * for a humidity that is none. Below the range of the equation it is carried on as it stands.
 *
 *   EMC = 1800/W [Kh/(1 − Kh) + (K₁Kh + 2K₁K₂K²h²)/(1 + K₁Kh + K₁K₂K²h²)]
 *
 * Source: Hailwood and Horrobin; USDA Wood Handbook (FPL-GTR-282), equation 4-5 with its coefficients for degrees Celsius (from memory).
 * Checked: tests/domain/climate/equilibriumMoisture.spec.ts.
 */
export function equilibriumMoisturePercent(temperatureC: number, humidityPercent: number): number | null {
  if (!(humidityPercent >= 0 && humidityPercent <= 100) || !Number.isFinite(temperatureC)) return null
  const t = temperatureC
  const h = humidityPercent / 100
  const w = 349 + 1.29 * t + 0.0135 * t ** 2
  const k = 0.805 + 0.000736 * t - 0.00000273 * t ** 2
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t ** 2
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t ** 2
  const kh = k * h
  return (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2))
}
