import { describe, expect, it } from 'vitest'
import { equilibriumMoisturePercent } from '#domain/climate/equilibriumMoisture.ts'

describe('the moisture that wood comes to', () => {
  // USDA Wood Handbook, table 4-2 (from memory), one decimal: 21.1 degrees Celsius.
  it.each([
    [5, 1.3],
    [10, 2.5],
    [20, 4.5],
    [30, 6.2],
    [40, 7.7],
    [50, 9.2],
    [60, 11.0],
    [65, 12.0],
    [70, 13.1],
    [80, 16.0],
    [90, 20.5],
    [95, 23.9],
  ])('at %d %% is that of the table', (humidityPercent, moisture) => {
    expect(equilibriumMoisturePercent(21.1, humidityPercent)).toBeCloseTo(moisture, 1)
  })

  // The same table, 30 degrees Fahrenheit.
  it.each([
    [5, 1.4],
    [10, 2.6],
    [20, 4.6],
    [40, 7.9],
    [65, 12.4],
    [80, 16.5],
    [95, 24.3],
  ])('in the cold at %d %% is that of the table', (humidityPercent, moisture) => {
    expect(equilibriumMoisturePercent(-1.1, humidityPercent)).toBeCloseTo(moisture, 1)
  })

  it('is 8.4 % at 140 degrees Fahrenheit and 55 %, as worked out with the equation in public copies of the handbook', () => {
    expect(equilibriumMoisturePercent(60, 55)).toBeCloseTo(8.4, 1)
  })

  it('is 12 % in the standard atmosphere of 20 degrees and 65 %', () => {
    expect(equilibriumMoisturePercent(20, 65)).toBeCloseTo(12, 1)
  })

  it('is nothing for a humidity that is none', () => {
    expect(equilibriumMoisturePercent(20, 101)).toBeNull()
    expect(equilibriumMoisturePercent(20, -1)).toBeNull()
    expect(equilibriumMoisturePercent(Number.NaN, 50)).toBeNull()
  })
})
