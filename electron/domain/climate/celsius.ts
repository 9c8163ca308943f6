import type { TemperatureUnit } from '#contract/findings/climate.ts'

/** °C of a temperature in either unit: 0 °C is 32 °F, and 100 °C is 212 °F. Checked: tests/domain/climate/celsius.spec.ts. */
export function celsius(value: number, unit: TemperatureUnit): number {
  return unit === 'C' ? value : ((value - 32) * 5) / 9
}
