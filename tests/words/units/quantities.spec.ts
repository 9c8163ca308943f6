import { describe, expect, it } from 'vitest'
import { withoutEndingZeros, writeTyped } from '#words/units/numbers.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { SI, US } = { SI: quantitiesIn('SI'), US: quantitiesIn('US') }

describe('quantities', () => {
  // NIST SP 811 (2008), appendix B.8: 1 lbf = 4.448 222 N, 1 psi = 6.894 757 kPa, 1 in = 25.4 mm, 1 in² = 645.16 mm², 1 lb = 0.453 592 37 kg, 1 ft·lbf = 1.355 818 J.
  it.each([
    ['force', 4448.222, '1000', 'lbf'],
    ['strength', 6.894757, '1000', 'psi'],
    ['length', 25.4, '1', 'in'],
    ['area', 645.16, '1', 'in²'],
    ['mass', 0.45359237, '1', 'lb'],
    ['energy', 1.355818, '12', 'in·lbf'],
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
