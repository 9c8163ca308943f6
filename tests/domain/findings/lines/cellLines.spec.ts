import { describe, expect, it } from 'vitest'
import { findingLine } from '#contract/findings/lines.ts'
import { findingsOptions } from '#contract/findings/options.ts'
import { cellLines } from '#domain/findings/lines/cellLines.ts'
import type { Observation, Treatment } from '#domain/findings/observation.ts'
import { block } from '../knownStudies.ts'

const options = findingsOptions.parse({})
const treatment: Treatment = { woodFailure: 'observed', limitPercent: 75, adjustFactor: 1 }
const linesOf = (counted: Observation[], given = options) => [
  ...cellLines({ group: 'G', ageMonths: 6, counted, excluded: 0 }, treatment, given, () => true),
]
const strengths = (...values: number[]) => values.map((strengthMPa) => block({ strengthMPa }))
const notes = (counted: Observation[]) =>
  linesOf(counted).flatMap((line) => (line.kind === 'note' ? [`${line.about} ${line.code}`] : []))

describe('the lines of one group at one age', () => {
  it('are lines of the contract, each with its group and age', () => {
    for (const line of linesOf(strengths(5, 6, 7, 8, 20))) {
      expect(findingLine.parse(line)).toEqual(line)
      expect(line).toMatchObject({ group: 'G', ageMonths: 6 })
    }
  })

  it('hold three fits without a distribution, one with', () => {
    const fits = (given = options) => linesOf(strengths(5, 6, 7), given).filter(({ kind }) => kind === 'censored-fit')
    expect(fits()).toHaveLength(3)
    expect(fits({ ...options, distribution: 'weibull' })).toHaveLength(1)
  })

  it('point out the block that lies far out, by its name', () => {
    const blocks = [...strengths(5, 5.1, 5.2, 4.9, 5, 5.1), block({ strengthMPa: 9, specimen: 'C7' })]
    const found = linesOf(blocks).filter((line) => line.kind === 'outlier')
    expect(found.map(({ method, specimen }) => [method, specimen])).toEqual([
      ['grubbs', 'C7'],
      ['generalized-esd', 'C7'],
    ])
  })

  it('are computed only where they are asked for', () => {
    const cell = { group: 'G', ageMonths: 6, counted: strengths(5, 6, 7), excluded: 0 }
    const lines = [...cellLines(cell, treatment, options, (kind) => kind === 'group-summary')]
    expect(lines.map(({ kind }) => kind)).toEqual(['group-summary'])
  })

  it.each([
    ['no block', [], ['group-summary no-blocks']],
    ['one block', strengths(5), ['group-summary one-block', 'censored-fit one-strength']],
    ['equal blocks', strengths(5, 5), ['group-summary no-spread', 'censored-fit one-strength']],
    [
      'wood that always broke first',
      [5, 6].map((strengthMPa) => block({ strengthMPa, woodFailurePercent: 100 })),
      ['censored-fit no-failure'],
    ],
    [
      'one bond broken among wood',
      [6, 5, 7].map((strengthMPa) => block({ strengthMPa, woodFailurePercent: strengthMPa === 5 ? 0 : 100 })),
      ['censored-fit open-interval'],
    ],
  ])('say in a note what %s cannot show', (_what, blocks, expected) => {
    expect(notes(blocks)).toEqual(expected)
  })

  it('have nulls where there is no fit', () => {
    const fit = linesOf(strengths(5)).find((line) => line.kind === 'censored-fit')
    expect(fit).toMatchObject({ failures: 1, censored: 0, parameters: null, b10MPa: null, aic: null })
  })
})
