import { expect, it } from 'vitest'
import { classHalfWidthKg } from '#domain/calibration/weights/weightTolerance.ts'
import { usualWeights } from '#renderer/pages/calibration/weights/weightForm.ts'
import { densityWords, toleranceWords } from '#words/calibration/toleranceWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { smallMass, density } = quantitiesIn('SI')

// OIML R 111-1:2004, table 1: 10 kg of class M1 may be off by 500 mg, 20 kg by 1 g.
it('says by how much a weight of a class may be off', () => {
  expect(toleranceWords(usualWeights.SI[3]!, smallMass)).toBe('±500\u00a0mg, class M1')
  expect(toleranceWords(usualWeights.SI[4]!, smallMass)).toBe('±1\u00a0g, class M1')
})

it('says that a class has no limit for an odd mass, instead of failing', () => {
  const odd = { nominalKg: 7.3, tolerance: { kind: 'oiml', class: 'M1' } } as const
  expect(classHalfWidthKg(odd)).toBeNull()
  expect(toleranceWords(odd, smallMass)).toContain('no limit for this mass')
})

it('names who says so where the tolerance is the owner’s, and what a density is taken from', () => {
  expect(toleranceWords({ nominalKg: 7.3, tolerance: { kind: 'own', halfWidthKg: 0.003 } }, smallMass)).toBe(
    '±3\u00a0g, by its owner',
  )
  expect(densityWords({ density: { kind: 'typed', kgPerM3: 7100 } }, density)).toBe('7100\u00a0kg/m³')
})

it('says both in the units of the program', () => {
  // NIST SP 811: 1 oz = 28.349 52 g, 1 lb/ft³ = 16.018 46 kg/m³.
  const US = quantitiesIn('US')
  expect(toleranceWords(usualWeights.SI[4]!, US.smallMass)).toBe('±0.0353\u00a0oz, class M1')
  expect(densityWords({ density: { kind: 'typed', kgPerM3: 8009.23 } }, US.density)).toBe('500\u00a0lb/ft³')
})
