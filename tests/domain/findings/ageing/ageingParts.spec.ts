import { describe, expect, it } from 'vitest'
import { ageingQuestion } from '#contract/findings/ageing.ts'
import { type AgeingPart, ageingUnits } from '#domain/findings/ageing/ageingParts.ts'
import { slopesTogether } from '#domain/findings/ageing/slopesTogether.ts'
import { boardEffect } from '#domain/findings/boardEffect.ts'
import type { Observation } from '#domain/findings/observation.ts'
import { block } from '../knownStudies.ts'

const { filter: _filter, ...question } = ageingQuestion.parse({})
/** Three groups at four ages, three blocks each from three boards. */
const observations: Observation[] = ['A', 'B', 'C'].flatMap((group, g) =>
  [0, 6, 12, 24].flatMap((ageMonths) =>
    [0, 1, 2].map((i) =>
      block({
        ...{ group, ageMonths, board: `plank ${i}`, woodFailurePercent: i === 0 ? 90 : 10 },
        strengthMPa: 10 + g - ageMonths / (10 + 3 * g) + [0.3, -0.2, 0.4][i]! * (1 + ((ageMonths + g) % 5) / 5),
      }),
    ),
  ),
)
const partsOf = (from = observations, change = {}): AgeingPart[] =>
  ageingUnits(from, { ...question, ...change }, () => 120).flatMap((unit) => [...unit.lines()])
const found = <Of extends AgeingPart['of']>(parts: readonly AgeingPart[], of: Of) =>
  parts.flatMap((part) => (part.of === of ? [part.found as Extract<AgeingPart, { of: Of }>['found']] : []))

describe('the parts of what changes with age', () => {
  it('are a line for each series to its end, the slopes together, and the boards at each age', () => {
    const parts = partsOf()
    expect(found(parts, 'series').map(({ group, endMonths }) => [group, endMonths])).toEqual([
      ['A', 120],
      ['B', 120],
      ['C', 120],
    ])
    const blocks = (of: string) => observations.filter(({ group }) => group === of)
    const together = slopesTogether(
      ['A', 'B', 'C'].map((group) => ({
        group,
        blocks: blocks(group).map((one) => ({ ...one, ageMonths: one.ageMonths! })),
      })),
      0.95,
    )
    expect(found(parts, 'together')).toEqual([together])
    expect(found(parts, 'boards').map(({ ageMonths, boards }) => [ageMonths, boards])).toEqual([
      [0, 3],
      [6, 3],
      [12, 3],
      [24, 3],
    ])
  })

  it('hold for the boards what their model says, beside the plain means', () => {
    const [first] = found(partsOf(), 'boards')
    const young = observations.filter(({ ageMonths }) => ageMonths === 0)
    const effect = boardEffect(young.map(({ group, board, strengthMPa }) => ({ group, board: board!, strengthMPa })))!
    expect(first).toMatchObject({ boardShare: effect.boardShare, p: effect.p })
    const plain = young.filter(({ group }) => group === 'A').reduce((sum, { strengthMPa }) => sum + strengthMPa / 3, 0)
    expect(first!.groups[0]!.plainMPa).toBeCloseTo(plain, 12)
  })

  it('hold no boards where none is known, and no slopes together of two series', () => {
    const two = observations.filter(({ group }) => group !== 'C').map((one) => ({ ...one, board: null }))
    const parts = partsOf(two)
    expect(found(parts, 'boards')).toEqual([])
    expect(found(parts, 'together')).toEqual([])
    expect(found(parts, 'series')).toHaveLength(2)
  })

  it('leave out what a person left out, and what the treatment of torn wood leaves out', () => {
    const options = { ...question.options, woodFailure: 'bond-only' as const }
    const bonds = observations.filter(({ woodFailurePercent }) => woodFailurePercent === 10)
    const without = (parts: AgeingPart[]) => parts.filter(({ of }) => of !== 'boards')
    expect(without(partsOf(observations, { options }))).toEqual(without(partsOf(bonds)))
    const excluded = observations.map((one) => (one.group === 'C' ? { ...one, excludedBecause: 'wet' } : one))
    expect(found(partsOf(excluded), 'series').map(({ group }) => group)).toEqual(['A', 'B'])
  })

  it('have the keys of what they rest on and of nothing else', () => {
    const keys = (from: readonly Observation[], change = {}) =>
      ageingUnits(from, { ...question, ...change }, () => 120).map(({ key }) => key)
    const changed = observations.with(0, { ...observations[0]!, strengthMPa: 99 })
    const moved = keys(changed).filter((key, i) => key !== keys(observations)[i])
    expect(moved.map((key) => key.split(' ')[0])).toEqual(['series', 'together', 'boards'])
    const share = keys(observations, { sharePercent: 50 }).filter((key, i) => key !== keys(observations)[i])
    expect(share.map((key) => key.split(' ')[0])).toEqual(['series', 'series', 'series'])
  })
})
