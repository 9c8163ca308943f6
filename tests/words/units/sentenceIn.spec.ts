import { describe, expect, it } from 'vitest'
import { checkCalibrationRows } from '#domain/calibration/calibrationRows.ts'
import { checkedConditions, checkedWeights } from '#domain/calibration/routinePlan.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { exactSentenceIn, sentenceIn, troubleIn } from '#words/units/sentenceIn.ts'

const us = (sentence: string) => plainText(sentenceIn(sentence, quantitiesIn('US')))

describe('a sentence about stored values', () => {
  it('stays as it is in SI units', () => {
    expect(sentenceIn('more than the rated load of 5000 N', quantitiesIn('SI'))).toBe(
      'more than the rated load of 5000 N',
    )
  })

  // NIST SP 811, Appendix B.8: 1 lbf = 4.448222 N, 1 lb = 0.45359237 kg, 1 in = 25.4 mm, 1 psi = 6894.757 Pa, 1 ft = 0.3048 m.
  it.each([
    ['more than 4448.222 N.', 'more than 1000 lbf.'],
    ['its load of -4.4482216 N is', 'its load of -1.0 lbf is'],
    ['above 0 kg; for', 'above 0 lb; for'],
    ['of 0.45359237 kg in class M1', 'of 1 lb in class M1'],
    ['from 25.4 mm to', 'from 1 in to'],
    ['645.16 mm2', '1 in²'],
    ['6.894757 MPa', '1000 psi'],
    ['to 10,000 m.', 'to 32808 ft.'],
    ['0 °C', '32.0 °F'],
    ['between 9.76 m/s2 and', 'between 32.021 ft/s² and'],
    // 1 lb/ft3 = 16.01846 kg/m3
    ['16.01846 kg/m3', '1 lb/ft³'],
  ])('says %j in US units', (si, expected) => expect(us(si).replace(/(\d)[\u202f ](?=\d{3})/g, '$1')).toBe(expected))

  it('leaves alone what a person named, what is no quantity and what names no unit', () => {
    const sentence = 'The weight "20 kg b" and “5 kg”, row 3, 2 minutes, 4 Nm, 12 marks, 7 m/s.'
    expect(us(sentence)).toBe(sentence)
  })
})

it('keeps the figures in which two values differ where that is asked for', () => {
  const sentence = exactSentenceIn('4448.2216152605 N is not 4448.2216152606 N', quantitiesIn('US'))
  expect(plainText(sentence)).toBe('1000 lbf is not 1000.00000000002 lbf')
})

it('says a trouble in US units, with what there is to do', () => {
  const trouble = { code: 'invalid-input', message: 'More than 4448.222 N.', hint: 'Take 0.45359237 kg.' } as const
  const { code, message, hint } = troubleIn(trouble, quantitiesIn('US'))
  expect([code, plainText(message), plainText(hint)]).toEqual(['invalid-input', 'More than 1000 lbf.', 'Take 1 lb.'])
})

describe('the troubles of a calibration in US units', () => {
  const refusalOf = (act: () => unknown) => {
    try {
      act()
    } catch (thrown) {
      const { message, hint } = thrown as { message: string; hint: string }
      return us(`${message} ${hint}`)
    }
    throw new Error('nothing was refused')
  }
  const row = { run: 1, direction: 'up' as const, forceN: 6000, reading: 1 }
  const weight = { name: '10 kg', nominalKg: 10, conventionalMassKg: null } as const
  const m1 = { kind: 'oiml', class: 'M1' } as const
  const iron = { kind: 'material', material: 'cast iron' } as const
  const air = { airDensityKgPerM3: 3, leverRatio: 1, leverHalfWidthPercent: 0 }
  it.each([
    ['a load', () => checkCalibrationRows([row], { capacityN: 5000, invertedAccepted: false })],
    ['a mass', () => checkedWeights([{ ...weight, nominalKg: -1, tolerance: m1, density: iron }])],
    ['a tolerance', () => checkedWeights([{ ...weight, tolerance: { kind: 'own', halfWidthKg: -1 }, density: iron }])],
    ['a density', () => checkedWeights([{ ...weight, tolerance: m1, density: { kind: 'typed', kgPerM3: 1 } }])],
    [
      'a height',
      () =>
        checkedConditions({
          ...air,
          gravity: { kind: 'latitude', latitudeDeg: 50, heightM: 20_000, ellipsoid: 'GRS 80' },
        }),
    ],
    ['gravity', () => checkedConditions({ ...air, gravity: { kind: 'typed', gMPerS2: 12, halfWidthMPerS2: 0 } })],
    ['air', () => checkedConditions({ ...air, gravity: { kind: 'typed', gMPerS2: 9.81, halfWidthMPerS2: 0 } })],
  ])('name no unit of SI for %s', (_what, act) => {
    expect(refusalOf(act).replaceAll(/"[^"]*"/g, '')).not.toMatch(/ (N|kg|kg\/m3|m|m\/s2|metres)\b/)
  })
})
