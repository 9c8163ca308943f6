import { describe, expect, it } from 'vitest'
import type { Overview } from '#contract/findings/overview.ts'
import type { GroupBlock } from '#domain/findings/overview/overviewGroups.ts'
import {
  boundedWords,
  groupMeanWords,
  overviewAbout,
  overviewBlockWords,
  overviewGroupWords,
  simulatedBlocksWords,
} from '#words/findings/overviewWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const quantities = quantitiesIn('SI')
const traits = { adhesive: 'casein C1', jointType: 'beech lap', bondLineGapMm: 0, exposure: 'loft', ageMonths: 6 }
const block = (
  state: GroupBlock['state'],
  strengthMPa: number | null,
  woodFailurePercent: number | null = null,
): GroupBlock => ({
  ...{ number: '', specimenId: 1, breakId: null, state, strengthMPa, woodFailurePercent },
})

describe('the words of a group', () => {
  it('say what broke, how strong, how much in the wood, and what became of the others', () => {
    const blocks = [
      ...[block('curve', 4, 80), block('peak-only', 6, 10), block('excluded', 9, 0), block('lost', null)],
      ...[block('waiting', null), block('planned', null)],
    ]
    expect(overviewGroupWords({ ...traits, blocks }, quantities)).toBe(
      'casein C1, beech lap, tight joint, loft, 6 months old: 2 broken, 4.00 to 6.00\u00a0MPa, mean 5.00\u00a0MPa, 1 of 2 with 75 % wood failure or more; 1 peak only; 1 left out; 1 lost; 1 on the shelf; 1 not glued yet',
    )
  })
  it('say one strength once, and none where there is none', () => {
    expect(overviewGroupWords({ ...traits, blocks: [block('curve', 4)] }, quantities)).toContain(
      ': 1 broken, 4.00\u00a0MPa',
    )
    expect(overviewGroupWords({ ...traits, blocks: [block('waiting', null)] }, quantities)).toContain(
      ': 0 broken; 1 on',
    )
  })
})

describe('the words of a block', () => {
  it('say its strength, its wood and what is particular about it', () => {
    const words = (one: GroupBlock) => overviewBlockWords(one, quantities.strength)
    expect(words(block('curve', 4, 30))).toBe('4.00\u00a0MPa, 30 % wood failure')
    expect(words(block('peak-only', 4))).toBe('4.00\u00a0MPa, faces not assessed, peak only, no curve')
    expect(words(block('curve', null, 0))).toBe('broken, bonded area not known, 0 % wood failure')
    expect(words(block('waiting', null))).toBe('on the shelf')
  })
})

describe('the words of a mean', () => {
  const mean = { ...traits, n: 1, held: 0, meanMPa: 4, noFit: null, percentOfReference: null }
  const name = 'casein C1, beech lap, tight joint, loft, 6 months old'
  it('hold it against the reference where both are there', () => {
    expect(groupMeanWords({ ...mean, percentOfReference: 50 }, 'E4', quantities)).toBe(
      `${name}: mean 4.00\u00a0MPa of 1 block, 50 % of E4`,
    )
    expect(groupMeanWords(mean, 'E4', quantities)).toBe(`${name}: mean 4.00\u00a0MPa of 1 block; E4 has none here`)
    expect(groupMeanWords({ ...mean, n: 0, meanMPa: null }, 'E4', quantities)).toBe(`${name}: no mean`)
  })
  it('say how many bonds held more, and why none could be fitted', () => {
    expect(groupMeanWords({ ...mean, n: 12, held: 3 }, null, quantities)).toBe(
      `${name}: mean 4.00\u00a0MPa of 12 blocks, of which 3 held more`,
    )
    const noFit = 'no-failure' as const
    expect(groupMeanWords({ ...mean, n: 2, held: 2, meanMPa: null, noFit }, null, quantities)).toBe(
      `${name}: no bond broke, so that the strength of the bonds is not known, only that they held`,
    )
  })
})

it('says of a saved overview which blocks it shows', () => {
  const shown = { numbers: ['a', 'b'] } as Overview
  expect(overviewAbout({ ...shown, blocks: 2 }, 'Loft')).toBe('Loft.')
  expect(overviewAbout({ ...shown, blocks: 5 }, 'Loft')).toMatch(/^Loft\. 2 of 5 blocks are shown/)
})

it('says how many are shown, and how many of them nobody measured', () => {
  expect(boundedWords(20_000, 100_000)).toMatch(/^20\u2009000 of 100\u2009000 blocks are shown/)
  expect(simulatedBlocksWords(3, 3)).toMatch(/^All blocks shown are simulated/)
  expect(simulatedBlocksWords(2, 3)).toMatch(/^2 of the blocks shown are simulated/)
})
