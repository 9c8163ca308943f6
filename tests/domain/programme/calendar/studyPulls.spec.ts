import { describe, expect, it } from 'vitest'
import { pullDecision } from '#contract/programme/pull.ts'
import { studyFields } from '#contract/programme/study.ts'
import type { Spare } from '#domain/programme/calendar/shareSpares.ts'
import { type GluedCount, type PullSource, sparesWaiting, studyPulls } from '#domain/programme/calendar/studyPulls.ts'

const fields = studyFields.parse({
  ...{ title: 'Loft and bilge', adhesives: ['casein C1'], jointTypes: ['lap'], gapsMm: [0], exposures: ['loft'] },
  ...{ agesMonths: [0, 6, 12], blocksPerCell: 3, windowDays: 14, startOn: '2031-08-31', seed: 1 },
})
const count = (gluedOn: string, ageMonths: number | null, change: Partial<GluedCount> = {}): GluedCount => ({
  ...{ gluedOn, ageMonths, planned: 3, waiting: 3, broken: 0, lost: 0 },
  ...change,
})
const source = (change: Partial<PullSource> = {}): PullSource => ({
  study: { studyId: 4, revision: 1, recordedAt: '2031-01-01T00:00:00.000Z', by: '', reason: '', fields },
  ...{ counts: [], unglued: [], decisions: [], spares: [], corrections: 0, glueUps: [] },
  ...change,
})
const decision = (change: object) =>
  pullDecision.parse({
    ...{ pullDecisionId: 1, recordedAt: '2031-09-01T00:00:00.000Z', by: 'bench', reason: 'away', studyId: 4 },
    ...{ gluedOn: null, ageMonths: 6, kind: 'moved', dueOn: null, blocksPerSeries: null },
    ...change,
  })
const on = (today: string, given: PullSource) => studyPulls(given, today)

describe('before any glue-up', () => {
  it('pulls are counted from the day on which the study is to start', () => {
    const pulls = on('2031-01-01', source({ unglued: [{ ageMonths: 6, blocks: 3 }] }))
    expect(pulls.map(({ ageMonths, dueOn, state, gluedOn }) => [ageMonths, dueOn, state, gluedOn])).toEqual([
      [0, '2031-08-31', 'planned', null],
      [6, '2032-02-29', 'planned', null],
      [12, '2032-08-31', 'planned', null],
    ])
    const none = { planned: 0, waiting: 0, broken: 0, lost: 0 }
    expect(pulls.map(({ blocks }) => blocks)).toEqual([none, { ...none, planned: 3 }, none])
  })

  it('there is no pull where no day is known', () => {
    const undated = { ...source().study, fields: { ...fields, startOn: null } }
    expect(on('2031-01-01', source({ study: undated }))).toEqual([])
  })
})

describe('a glue-up', () => {
  const counts = [count('2031-09-10', 6), count('2031-10-31', 6), count('2031-10-31', 12)]

  it('has its own pulls, by the ages of its blocks and its own day', () => {
    expect(on('2031-11-01', source({ counts })).map(({ gluedOn, dueOn }) => [gluedOn, dueOn])).toEqual([
      ['2031-09-10', '2032-03-10'],
      ['2031-10-31', '2032-04-30'],
      ['2031-10-31', '2032-10-31'],
    ])
  })

  it('is listed among others by the day of its pulls, and by age where two fall on one', () => {
    const moved = (ageMonths: number) => decision({ gluedOn: '2031-10-31', ageMonths, dueOn: '2032-03-10' })
    const others = [count('2031-08-01', 0), count('2031-08-01', 24)]
    const given = source({ counts: [...counts, ...others].reverse(), decisions: [moved(12), moved(6)] })
    const pulls = on('2031-11-01', given)
    expect(pulls.map(({ gluedOn, dueOn, ageMonths }) => [dueOn, ageMonths, gluedOn])).toEqual([
      ['2031-08-01', 0, '2031-08-01'],
      ['2032-03-10', 6, '2031-10-31'],
      ['2032-03-10', 6, '2031-09-10'],
      ['2032-03-10', 12, '2031-10-31'],
      ['2033-08-01', 24, '2031-08-01'],
    ])
  })

  it('takes the place of the planned start under the same key, with a higher sequence', () => {
    const [before] = on('2031-01-01', source()).filter(({ ageMonths }) => ageMonths === 6)
    const [after] = on('2031-11-01', source({ counts }))
    expect(after!.key).toBe(before!.key)
    expect(after!.sequence).toBeGreaterThan(before!.sequence)
  })

  it('keeps its keys when another is recorded', () => {
    const keys = (given: GluedCount[]) => on('2031-11-01', source({ counts: given })).map(({ key }) => key)
    const later = [...counts, count('2031-01-05', 6)]
    expect(keys(later)).toEqual(expect.arrayContaining(keys(counts)))
    expect(new Set(keys(later)).size).toBe(4)
  })
})

describe('a word on a pull', () => {
  const counts = [count('2031-08-31', 6), count('2031-08-31', null, { planned: 4, waiting: 3, broken: 1 })]
  const spare = (specimenId: number, change: Partial<Spare> = {}): Spare => ({
    ...{ specimenId, gluedOn: '2031-08-31', series: 'casein', standing: 'waiting', brokenAtMonths: [] },
    ...change,
  })
  const spares = [spare(1, { standing: 'broken', brokenAtMonths: [9] }), spare(2), spare(3), spare(4)]

  it('moves it, skips it, and puts it back', () => {
    const moved = decision({ dueOn: '2032-04-01' })
    const skipped = decision({ kind: 'skipped' })
    const standing = (...decisions: ReturnType<typeof decision>[]) => {
      const [pull] = on('2031-09-01', source({ counts, decisions }))
      return [pull!.dueOn, pull!.state, pull!.sequence, pull!.decision?.kind]
    }
    expect(standing()).toEqual(['2032-02-29', 'planned', 1, undefined])
    expect(standing(moved)).toEqual(['2032-04-01', 'planned', 2, 'moved'])
    expect(standing(moved, skipped)).toEqual(['2032-04-01', 'skipped', 3, 'skipped'])
    const restored = decision({ kind: 'restored' })
    expect(standing(moved, skipped, restored)).toEqual(['2032-02-29', 'planned', 4, 'restored'])
  })

  it('on another day of glue-up leaves it alone', () => {
    const other = decision({ gluedOn: '2031-10-31', kind: 'skipped' })
    expect(on('2031-09-01', source({ counts, decisions: [other] }))[0]!.state).toBe('planned')
  })

  it('adds one of spares, which is skipped when it is taken back', () => {
    const added = decision({ kind: 'added', ageMonths: 9, blocksPerSeries: 2 })
    const [pull] = on('2031-09-01', source({ counts, spares, decisions: [added] })).filter(
      ({ ageMonths }) => ageMonths === 9,
    )
    expect(pull).toMatchObject({
      dueOn: '2032-05-31',
      added: true,
      blocks: { planned: 2, broken: 1, waiting: 1, lost: 0 },
    })
    const back = on(
      '2031-09-01',
      source({ counts, spares, decisions: [added, decision({ kind: 'restored', ageMonths: 9 })] }),
    )
    expect(back.find(({ ageMonths }) => ageMonths === 9)!.state).toBe('skipped')
  })

  it('adds one of no blocks where no spare was made', () => {
    const added = decision({ kind: 'added', ageMonths: 9, blocksPerSeries: 2 })
    const [pull] = on('2031-09-01', source({ counts: counts.slice(0, 1), decisions: [added] })).filter(
      (one) => one.added,
    )
    expect(pull!.blocks).toEqual({ planned: 0, waiting: 0, broken: 0, lost: 0 })
  })

  it('that moves an age which none of the blocks has adds no pull', () => {
    const moved = decision({ ageMonths: 9, dueOn: '2032-04-01' })
    expect(on('2031-09-01', source({ counts, decisions: [moved] })).map(({ ageMonths }) => ageMonths)).toEqual([6])
  })

  it('that adds an age which the plan has leaves the blocks of the plan', () => {
    const pulls = on('2031-09-01', source({ counts, decisions: [decision({ kind: 'added', blocksPerSeries: 2 })] }))
    expect(pulls.map(({ ageMonths, added, blocks }) => [ageMonths, added, blocks.planned])).toEqual([[6, false, 3]])
  })

  it('an added pull that was taken back leaves its spares to the others', () => {
    const added = [9, 10].map((ageMonths) => decision({ kind: 'added', ageMonths, blocksPerSeries: 3 }))
    const decisions = [...added, decision({ kind: 'restored', ageMonths: 9 })]
    const pulls = on('2031-09-01', source({ counts, spares, decisions })).filter(({ added }) => added)
    expect(pulls.map(({ ageMonths, blocks }) => [ageMonths, blocks])).toEqual([
      [9, { planned: 0, broken: 0, waiting: 0, lost: 0 }],
      [10, { planned: 3, broken: 0, waiting: 3, lost: 0 }],
    ])
  })

  it('two added pulls do not take the same spares', () => {
    const decisions = [9, 10].map((ageMonths) => decision({ kind: 'added', ageMonths, blocksPerSeries: 3 }))
    const pulls = on('2031-09-01', source({ counts, spares, decisions })).filter(({ added }) => added)
    expect(pulls.map(({ blocks }) => blocks)).toEqual([
      { planned: 3, broken: 1, waiting: 2, lost: 0 },
      { planned: 3, broken: 0, waiting: 1, lost: 2 },
    ])
  })
  it('names the spares that wait for a pull which was added, of one day of glue-up or of all, as its counts say', () => {
    const other = '2031-09-10'
    const added = decision({ kind: 'added', ageMonths: 9, blocksPerSeries: 2 })
    const given = source({
      counts: [...counts, count(other, 9), count(other, null)],
      ...{ spares: [...spares, spare(5, { gluedOn: other })], decisions: [added] },
    })
    const waiting = (gluedOn: string | null, ageMonths = 9) => sparesWaiting(given, { gluedOn, ageMonths })
    expect(waiting('2031-08-31')).toEqual([2])
    expect(on('2031-09-01', given).find((one) => one.added)!.blocks.waiting).toBe(1)
    // Planned for that age
    expect(waiting(other)).toEqual([])
    expect(waiting(null)).toEqual([2])
    expect(waiting(null, 6)).toEqual([])
  })

  it('raises the sequence of its day, and of all days of its age once a correction may take it from one to another', () => {
    const sequences = (gluedOn: string, corrections: number) =>
      on(
        '2031-09-01',
        source({ counts: [...counts, count('2031-09-10', 6)], decisions: [decision({ gluedOn })], corrections }),
      ).map(({ sequence }) => sequence)
    expect(sequences('2031-08-31', 0)).not.toEqual(sequences('2031-09-10', 0))
    expect(sequences('2031-08-31', 1)).toEqual(sequences('2031-09-10', 1))
    const before = sequences('2031-08-31', 0)
    for (const [at, after] of sequences('2031-08-31', 1).entries()) expect(after).toBeGreaterThan(before[at]!)
  })
})
