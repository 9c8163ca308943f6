import { expect, it } from 'vitest'
import { blockKey, otherField, otherResult } from '#archive/specimens/import/sameBlock.ts'
import type { ImportedValues } from '#contract/specimens/importedResult.ts'
import { readBlock } from '../../storedImport.ts'

const values = (change: Partial<ImportedValues> = {}) => readBlock(2, change).values

it('agrees with what is recorded wherever a table says nothing, and whatever the capitals', () => {
  const stored = values({ lot: 'a', gluedOn: '2020-01-01', note: 'x', failurePattern: 'CF' })
  expect(otherField(values({ adhesive: 'Casein C1', lot: '', wood: '' }), stored)).toBeNull()
  expect(otherResult(values(), stored)).toBeNull()
})

it('names the first field that is recorded otherwise, or not at all', () => {
  expect(otherField(values({ gluedOn: '2020-01-02' }), values({ gluedOn: '2020-01-01' }))).toBe('gluedOn')
  expect(otherField(values({ bondLineGapMm: 0 }), values())).toBe('bondLineGap')
  expect(otherResult(values({ ageMonths: 12 }), values())).toBe('ageMonths')
  expect(otherResult(values({ peakN: null, strengthMPa: 8 }), values({ peakN: null, strengthMPa: 9 }))).toBe('strength')
})

it('takes computed values that differ in their last digits for the same, and a strength that follows from its load', () => {
  expect(otherField(values({ areaMm2: 600 * (1 + 1e-12) }), values())).toBeNull()
  expect(otherField(values({ areaMm2: 600.001 }), values())).toBe('area')
  expect(otherResult(values({ strengthMPa: 5000 / 600 }), values({ strengthMPa: null }))).toBeNull()
})

it('makes one text of equal blocks, and another of unequal ones', () => {
  expect(blockKey(values({ strengthMPa: 8.33 }))).toBe(blockKey(values()))
  expect(blockKey(values({ adhesive: '' }))).toBe(blockKey(values({ adhesive: '(not named)' })))
  expect(blockKey(values({ woodFailurePercent: 0 }))).not.toBe(blockKey(values()))
  expect(blockKey(values({ note: 'knot' }))).not.toBe(blockKey(values()))
})
