import { describe, expect, it } from 'vitest'
import { findingKind } from '#contract/findings/lines.ts'
import { findingsOptions } from '#contract/findings/options.ts'
import { findingLines } from '#domain/findings/lines/findingLines.ts'
import { block, handbookGroups } from '../knownStudies.ts'

const observations = handbookGroups.flatMap(({ group, values }) =>
  [...values].map((strengthMPa, i) => block({ group, strengthMPa, woodFailurePercent: i === 0 ? 90 : 10 })),
)
const aged = observations.map((one, i) => ({ ...one, ageMonths: [0, 6, 12, 24][i % 4]! }))
const linesOf = (given: object, from = observations) => [...findingLines(from, findingsOptions.parse(given))]

describe('findings', () => {
  it.each(findingKind.options)('hold only %s, and notes about it, when that alone is asked for', (only) => {
    const lines = linesOf({ only: [only], reference: '1', marginPercent: 20 }, aged)
    for (const line of lines)
      expect(line.kind === only || (line.kind === 'note' && (line.about === only || only === 'note'))).toBe(true)
  })

  it('compare what the treatment of torn wood leaves', () => {
    const meansOf = (woodFailure: string) =>
      linesOf({ woodFailure, only: ['means-test'] }).map((line) => (line.kind === 'means-test' ? line.statistic : null))
    const [observed, bondOnly, adjusted, censored] = ['observed', 'bond-only', 'adjusted', 'censored'].map(meansOf)
    expect(bondOnly).not.toEqual(observed)
    expect(adjusted).not.toEqual(observed)
    expect(censored).toEqual(observed)
  })

  it('censor in the fits whatever the treatment says', () => {
    const fit = linesOf({ only: ['censored-fit'], distribution: 'weibull' })[0]
    expect(fit).toMatchObject({ failures: 4, censored: 1 })
  })

  it('group blocks by the age of their pull, and fit models to their own ages', () => {
    const months = (one: number) => (one === 12 ? 13 : one)
    const late = aged.map((one) => ({ ...one, ageAtBreakMonths: months(one.ageMonths) }))
    const really = aged.map((one) => ({ ...one, ageMonths: months(one.ageMonths) }))
    const only = (kind: string, from: typeof aged) => linesOf({ only: [kind] }, from)
    expect(only('means-test', late)).toEqual(only('means-test', aged))
    expect(only('ageing-model', late)).toEqual(only('ageing-model', really))
    expect(only('ageing-model', late)).not.toEqual(only('ageing-model', aged))
  })

  it('compare within each age and follow each group over its ages', () => {
    const lines = linesOf({ only: ['means-test', 'trend'] }, aged)
    const ages = lines.flatMap((line) => (line.kind === 'means-test' ? [line.ageMonths] : []))
    expect([...new Set(ages)]).toEqual([0, 6, 12, 24])
    expect(lines.filter(({ kind }) => kind === 'trend')).toHaveLength(2 * handbookGroups.length)
  })

  it('take blocks that held into the models of ageing only where they are treated as censored', () => {
    const models = (woodFailure: string) =>
      linesOf({ woodFailure, only: ['ageing-model'] }, aged).map((line) =>
        line.kind === 'ageing-model' ? line.aicc : 0,
      )
    expect(models('censored')).not.toEqual(models('observed'))
  })

  it('say of simulated results that they are, whatever is asked for: once of all, else of each group that holds some', () => {
    const notes = (isSimulated: (i: number) => boolean, only = 'rank') =>
      linesOf(
        { only: [only] },
        observations.map((one, i) => ({ ...one, simulated: isSimulated(i) })),
      ).flatMap((line) => (line.kind === 'note' && line.about === 'results' ? [[line.code, line.group]] : []))
    expect(notes(() => true)).toEqual([['all-simulated', null]])
    expect(notes((i) => i === 0)).toEqual([['some-simulated', handbookGroups[0]!.group]])
    expect(notes(() => false)).toEqual([])
  })

  it('have no series without ages', () => {
    expect(linesOf({}).some(({ kind }) => kind === 'trend' || kind === 'forecast')).toBe(false)
  })
})
