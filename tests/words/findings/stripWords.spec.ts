import { describe, expect, it } from 'vitest'
import { groupStripWords, stripBlockWords, stripGroupWords, tornWoodWords } from '#words/findings/stripWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const block = { name: 'E4-07', strengthMPa: 9.13, lowerLimit: false, woodFailurePercent: 85 }

describe('words on a strip of groups', () => {
  it('tell strength and torn wood of a block, and what it held at least', () => {
    expect(stripBlockWords(block, strength)).toBe('E4-07: 9.13\u00a0MPa, 85 % wood failure')
    expect(stripBlockWords({ ...block, lowerLimit: true, woodFailurePercent: null }, strength)).toBe(
      'E4-07: at least 9.13\u00a0MPa, wood failure not assessed',
    )
    expect(tornWoodWords(0)).toBe('0 % wood failure')
    expect(tornWoodWords(200 / 3)).toBe('66.7 % wood failure')
  })
  it('tell how many blocks a group has, and its mean where one is given', () => {
    expect(stripGroupWords({ name: 'Epoxy E4', meanMPa: 9, blocks: [block] }, strength)).toBe(
      'Epoxy E4: 1 specimen, mean 9.00\u00a0MPa',
    )
  })
  it('tell the range of every group', () => {
    const blocks = [block, { ...block, strengthMPa: 7 }]
    expect(groupStripWords([{ name: 'Epoxy E4', meanMPa: null, blocks }], strength)).toBe(
      'Epoxy E4: 2 specimens, 7.00 to 9.13\u00a0MPa.',
    )
    expect(groupStripWords([{ name: 'Hide glue', meanMPa: null, blocks: [] }], strength)).toBe(
      'Hide glue: 0 specimens.',
    )
    expect(groupStripWords([], strength)).toBe('There is no group.')
  })
})
