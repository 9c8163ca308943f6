import { describe, expect, it } from 'vitest'
import { findingLine } from '#contract/findings/lines.ts'
import { findingsOptions } from '#contract/findings/options.ts'
import { ageingLines } from '#domain/findings/lines/ageingLines.ts'
import { agedMonths, agedStrengths } from '../ageing/agedBlocks.ts'

const options = findingsOptions.parse({})
const ages = [...new Set(agedMonths)].map((ageMonths) => ({
  ageMonths,
  blocks: agedMonths.flatMap((age, i) =>
    age === ageMonths ? [{ ageMonths, strengthMPa: agedStrengths[i]!, held: false }] : [],
  ),
}))
const linesOf = (count: number) => [...ageingLines({ group: 'G', ages: ages.slice(0, count) }, options, () => true)]

describe('the lines of one group over its ages', () => {
  it('are lines of the contract with its group', () => {
    for (const line of linesOf(5)) {
      expect(findingLine.parse(line)).toEqual(line)
      expect(line).toMatchObject({ group: 'G' })
    }
  })

  it('hold both trends, retention at each later age, and all five models', () => {
    const kinds = linesOf(5).map((line) => line.kind)
    expect(kinds.filter((kind) => kind === 'trend')).toHaveLength(2)
    expect(kinds.filter((kind) => kind === 'retention')).toHaveLength(4)
    expect(kinds.filter((kind) => kind === 'ageing-model')).toHaveLength(5)
  })

  it('carry a series of four ages on to ten, twenty and thirty years, and no shorter one', () => {
    const forecasts = (count: number) =>
      linesOf(count).flatMap((line) => (line.kind === 'forecast' ? [line.ageMonths] : []))
    expect(forecasts(4)).toEqual([120, 240, 360])
    expect(forecasts(3)).toEqual([])
    expect(linesOf(3)).toContainEqual(expect.objectContaining({ kind: 'note', about: 'forecast', code: 'few-ages' }))
  })

  it('carry a series that is past thirty years on to twice its last age', () => {
    const old = ages.map(({ ageMonths, blocks }) => ({
      ageMonths: ageMonths * 12,
      blocks: blocks.map((block) => ({ ...block, ageMonths: ageMonths * 12 })),
    }))
    const forecasts = [...ageingLines({ group: 'G', ages: old }, options, () => true)].filter(
      ({ kind }) => kind === 'forecast',
    )
    expect(forecasts).toMatchObject([{ ageMonths: 864 }])
  })

  it('carry a series on to the same ages whatever the order of its blocks', () => {
    const ageAt = (ageMonths: number, i: number) => ageMonths * 12 + i
    const pulls = ages.map(({ ageMonths, blocks }) => ({
      ageMonths: ageMonths * 12,
      blocks: blocks.map((block, i) => ({ ...block, ageMonths: ageAt(ageMonths, i) })),
    }))
    const backwards = pulls.map((pull) => ({ ...pull, blocks: pull.blocks.toReversed() }))
    const forecasts = [pulls, backwards].map((of) =>
      [...ageingLines({ group: 'G', ages: of }, options, () => true)].flatMap((line) =>
        line.kind === 'forecast' ? [line.ageMonths] : [],
      ),
    )
    expect(forecasts[0]).toEqual(forecasts[1])
  })

  it('say that one age is no series', () => {
    expect(linesOf(1)).toEqual([{ kind: 'note', about: 'trend', code: 'few-ages', group: 'G', ageMonths: null }])
  })

  it.each([
    ['that nothing was broken at age 0', ages.slice(1), 'retention later-start'],
    [
      'that single blocks bound no ratio',
      ages.map((age) => ({ ...age, blocks: age.blocks.slice(0, 1) })),
      'retention one-block',
    ],
    [
      'that single blocks show no change',
      ages.map((age) => ({ ...age, blocks: age.blocks.slice(0, 1) })),
      'detectable no-change-to-find',
    ],
  ])('say %s', (_what, given, note) => {
    const notes = [...ageingLines({ group: 'G', ages: given }, options, () => true)].flatMap((line) =>
      line.kind === 'note' ? [`${line.about} ${line.code}`] : [],
    )
    expect(notes).toContain(note)
  })

  it('say what is missing beside the kind that is asked for', () => {
    const lines = [...ageingLines({ group: 'G', ages: ages.slice(0, 1) }, options, (kind) => kind === 'retention')]
    expect(lines).toMatchObject([{ kind: 'note', about: 'retention', code: 'few-ages' }])
  })

  it('name the model that could not be fitted, and why', () => {
    const failed = linesOf(3).flatMap((line) => (line.kind === 'ageing-model' && line.failed !== null ? [line] : []))
    expect(failed).toMatchObject([
      { model: 'exponential-approach', failed: 'few-ages', parameters: null, weight: null },
    ])
  })
})
