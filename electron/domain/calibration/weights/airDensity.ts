/** Density of air under conventional conditions, kg/m3 (OIML R 111, from memory). */
export const conventionalAirDensity = 1.2

/**
 * Density of moist air in kg/m3 from pressure in hPa, relative humidity in percent and temperature in °C.
 *
 *   ρ = (0.34848 p − 0.009 h e^(0.061 t)) / (273.15 + t)
 *
 * Good to 2·10⁻⁴ of the value for 900..1100 hPa, 10..30 °C and less than 80 % relative humidity.
 * Throws RangeError for a pressure outside 500..1100 hPa, a humidity outside 0..100 % or a temperature outside −20..60 °C.
 * Source: OIML R 111-1:2004, E.3-1 (from memory). Checked: tests/domain/calibration/weights/airDensity.spec.ts against CIPM-2007.
 */
export function airDensity(pressureHPa: number, humidityPercent: number, temperatureC: number): number {
  if (!(pressureHPa >= 500 && pressureHPa <= 1100))
    throw new RangeError('airDensity requires a pressure from 500 to 1100 hPa')
  if (!(humidityPercent >= 0 && humidityPercent <= 100))
    throw new RangeError('airDensity requires a relative humidity from 0 to 100 %')
  if (!(temperatureC >= -20 && temperatureC <= 60))
    throw new RangeError('airDensity requires a temperature from -20 to 60 degrees Celsius')
  return (0.34848 * pressureHPa - 0.009 * humidityPercent * Math.exp(0.061 * temperatureC)) / (273.15 + temperatureC)
}
