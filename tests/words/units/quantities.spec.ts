import { describe, expect, it } from 'vitest'
import { withoutEndingZeros, writeTyped } from '#words/units/numbers.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { SI, US } = { SI: quantitiesIn('SI'), US: quantitiesIn('US') }

describe('quantities', () => {
  // NIST SP 811 (2008), appendix B.8: 1 lbf = 4.448 222 N, 1 psi = 6.894 757 kPa, 1 in = 25.4 mm, 1 in² = 645.16 mm², 1 lb = 0.453 592 37 kg, 1 ft·lbf = 1.355 818 J, 1 oz = 0.028 349 52 kg, 1 lb/ft³ = 16.018 46 kg/m³, 1 ft = 0.3048 m, °F = 9/5 °C + 32.
  it.each([
    ['force', 4448.222, '1000', 'lbf'],
    ['strength', 6.894757, '1000', 'psi'],
    ['length', 25.4, '1', 'in'],
    ['area', 645.16, '1', 'in²'],
    ['mass', 0.45359237, '1', 'lb'],
    ['energy', 1.355818, '12', 'in·lbf'],
    ['smallMass', 0.02834952, '1', 'oz'],
    ['density', 16.01846, '1', 'lb/ft³'],
    ['temperature', 20, '68', '°F'],
    ['height', 0.3048, '1', 'ft'],
    ['acceleration', 0.3048, '1', 'ft/s²'],
    ['forcePerCount', 4.448222, '1', 'lbf per count'],
  ] as const)('shows a %s of %d as %s %s', (name, stored, shown, unit) => {
    expect(withoutEndingZeros(US[name].number(stored))).toBe(shown)
    expect(US[name].unit).toBe(unit)
  })

  it('shows SI values as they are stored', () => {
    expect(SI.force.text(4812.4)).toBe('4812\u00a0N')
    expect(SI.strength.text(8.02)).toBe('8.02\u00a0MPa')
    expect(SI.area.text(600)).toBe('600\u00a0mm²')
  })

  it('writes into a field what reads back as the same length, and nothing for what is not known', () => {
    const inches = writeTyped(30, US.length.factor)
    expect(inches).toBe('1.1811')
    expect((Number(inches) / US.length.factor).toFixed(2)).toBe('30.00')
    expect(writeTyped(null, 1)).toBe('')
  })

  it('writes a dash for what is not known, never 0', () => {
    expect(SI.force.text(null)).toBe('–')
    expect(US.area.number(null)).toBe('–')
  })
})
