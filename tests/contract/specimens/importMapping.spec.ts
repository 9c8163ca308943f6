import { describe, expect, it } from 'vitest'
import { fillCode, importMapping } from '#contract/specimens/importMapping.ts'

const fits = (mapping: object) => importMapping.safeParse(mapping).success
const perSpecimen = { layout: 'row-per-specimen' }
const withField = (source: object) => fits({ ...perSpecimen, fields: { brokenOn: source } })

describe('a mapping', () => {
  it('has replicates with a row per group, blocks with blocks, and neither with the other', () => {
    const replicates = { columns: ['1'] }
    const blocks = [{ load: 'C', woodFailurePercent: { column: 'D' } }]
    expect(fits(perSpecimen)).toBe(true)
    expect(fits({ layout: 'row-per-group', replicates })).toBe(true)
    expect(fits({ layout: 'blocks', blocks })).toBe(true)
    expect(fits({ layout: 'row-per-group' })).toBe(false)
    expect(fits({ layout: 'blocks' })).toBe(false)
    expect(fits({ ...perSpecimen, replicates })).toBe(false)
    expect(fits({ ...perSpecimen, blocks })).toBe(false)
  })

  it('takes each field from one place, and refuses words that nobody knows', () => {
    expect(withField({ column: 'A' })).toBe(true)
    expect(withField({ column: 'A', value: 1 })).toBe(false)
    expect(withField({ fillOf: 'load' })).toBe(false)
    expect(withField({ fillOf: 'load', fills: { ffff00: 1, '#FFA500': 2, 'theme 4 -0.25': 3 } })).toBe(true)
    expect(withField({ fillOf: 'load', fills: { yellow: 1 } })).toBe(false)
    expect(fits({ ...perSpecimen, fields: { glue: { column: 'A' } } })).toBe(false)
    expect(fits({ ...perSpecimen, colour: 1 })).toBe(false)
    expect(withField({ column: 'A', unit: 'stone' })).toBe(false)
  })

  it('writes dates with day, month and year', () => {
    for (const format of ['D.M.YYYY', 'MM/DD/YY', 'YYYY-MM-DD', 'D MMM YYYY'])
      expect(withField({ column: 'A', dateFormat: format })).toBe(true)
    for (const format of ['D.M', 'dd.mm.yyyy', 'YYYY', 'D(M)YYYY'])
      expect(withField({ column: 'A', dateFormat: format })).toBe(false)
  })
})

it('knows a colour however its code is written', () => {
  expect(['#ffff00', 'FFFFFF00', 'ffff00', 'theme 4'].map(fillCode)).toEqual(['FFFF00', 'FFFF00', 'FFFF00', 'theme 4'])
})
