import { describe, expect, it } from 'vitest'
import { loggerHumidity, loggerTemperature } from '#exchange/climate/loggerNumber.ts'
import { textCell } from '#exchange/sheets/sheet.ts'

const point = { sign: '.', lonePoint: true } as const
const comma = { sign: ',', lonePoint: false } as const
const value = (read: { value: number } | { fault: string }) => ('fault' in read ? read.fault : read.value)
const temperature = (text: string, writing: Parameters<typeof loggerTemperature>[2] = point, unit: 'C' | 'F' = 'C') =>
  value(loggerTemperature(textCell(text), unit, writing))
const humidity = (text: string, writing: Parameters<typeof loggerHumidity>[1] = point) =>
  value(loggerHumidity(textCell(text), writing))

describe('the temperature of a cell', () => {
  it('is as it is written, with point or comma, minus and unit', () => {
    expect(temperature('-4.25')).toBe(-4.25)
    expect(temperature('−4,25', comma)).toBe(-4.25)
    expect(temperature('21.5 °C')).toBe(21.5)
    expect(temperature('70.7', point, 'F')).toBe(70.7)
  })

  it('is converted where the cell names the other unit', () => {
    expect(temperature('212 °F'.replace('212', '122'))).toBe(50)
    expect(temperature('50 C', point, 'F')).toBe(122)
  })

  it('is none where it is no number, has an unknown unit, or lies where no store is', () => {
    expect(temperature('open')).toBe('“open” is not a number as people write one')
    expect(temperature('294.6 K')).toBe('“294.6 K” has an unknown unit; it may be °C or °F')
    expect(temperature('21 constructor')).toContain('unknown unit')
    expect(temperature('-999')).toBe('-999 °C is no temperature of a store')
    expect(temperature('12.5', comma)).toContain('is not written with “,” before the decimals')
  })
})

describe('the humidity of a cell', () => {
  it('is from 0 to 100 percent, with or without its sign', () => {
    expect([humidity('64.5'), humidity('64,5 %', comma), humidity('64 %RH'), humidity('100')]).toEqual([
      64.5, 64.5, 64, 100,
    ])
    expect(humidity('100.4')).toBe('100.4 % is not from 0 to 100 % relative humidity')
    expect(humidity('12 g/m³')).toBe('“12 g/m³” has an unknown unit; it may be %')
  })
})
