import { expect, it } from 'vitest'
import { classHalfWidthKg } from '#domain/calibration/weights/weightTolerance.ts'
import { usualWeights } from '#renderer/pages/calibration/weights/weightForm.ts'
import { densityWords, toleranceWords } from '#words/calibration/toleranceWords.ts'

// OIML R 111-1:2004, table 1: 10 kg of class M1 may be off by 500 mg, 20 kg by 1 g.
it('says by how much a weight of a class may be off', () => {
  expect(toleranceWords(usualWeights[3]!)).toBe('±500 mg, class M1')
  expect(toleranceWords(usualWeights[4]!)).toBe('±1 g, class M1')
})

it('says that a class has no limit for an odd mass, instead of failing', () => {
  const odd = { nominalKg: 7.3, tolerance: { kind: 'oiml', class: 'M1' } } as const
  expect(classHalfWidthKg(odd)).toBeNull()
  expect(toleranceWords(odd)).toContain('no limit for this mass')
})

it('names who says so where the tolerance is the owner’s, and what a density is taken from', () => {
  expect(toleranceWords({ nominalKg: 7.3, tolerance: { kind: 'own', halfWidthKg: 0.003 } })).toBe('±3 g, by its owner')
  expect(densityWords({ density: { kind: 'typed', kgPerM3: 7100 } })).toBe('7100 kg/m³')
})
