import { describe, expect, it } from 'vitest'
import { sessionReport } from '#domain/programme/breaking/sessionReport.ts'
import { breakingMember } from '#tests/fakes/breakingMembers.ts'

const doubtsOf = (members: ReturnType<typeof breakingMember>[]) =>
  sessionReport(members).doubtful.map(({ member, doubts }) => [
    member.specimen.specimenId,
    doubts.map(({ kind }) => kind),
  ])

describe('the groups of a breaking session', () => {
  it('have their counts, mean, spread and wood failure over the blocks that count', () => {
    const [group] = sessionReport([
      breakingMember(1, 8.1, { summary: { woodFailurePercent: 40 } }),
      breakingMember(2, 9.2, { summary: { woodFailurePercent: 60 } }),
      breakingMember(3, 8.5, { summary: { woodFailurePercent: null } }),
      breakingMember(4, 3, { summary: { setAside: 'slipped' } }),
      breakingMember(5, null),
    ]).groups
    expect(group).toMatchObject({ adhesive: 'casein C1', ageMonths: 3, blocks: 5, broken: 4, setAside: 1 })
    // R: mean(c(8.1, 9.2, 8.5)) = 8.6, sd = 0.5567764; mean(c(40, 60)) = 50
    expect(group!.summary).toMatchObject({ n: 3, woodFailureMeanPercent: 50 })
    expect(group!.summary.meanMPa).toBeCloseTo(8.6, 12)
    expect(group!.summary.sdMPa).toBeCloseTo(0.5567764, 7)
  })

  it('are told apart by adhesive, joint, gap, exposure and age, whatever the case of the names', () => {
    const { groups } = sessionReport([
      breakingMember(1, 8),
      breakingMember(2, 8, { fields: { adhesive: 'Casein C1' } }),
      breakingMember(3, 8, { fields: { exposure: 'bilge' } }),
      breakingMember(4, 8, { fields: { bondLineGapMm: 0.5 } }),
      breakingMember(5, 8, { ageMonths: 6 }),
    ])
    expect(groups.map(({ blocks }) => blocks).toSorted()).toEqual([1, 1, 1, 2])
  })
})

describe('what is to be looked at again', () => {
  it('is nothing where all is as it should be', () =>
    expect(sessionReport([breakingMember(1, 8), breakingMember(2, 8.4)])).toMatchObject({ doubtful: [], toRepeat: [] }))

  it('is what the curve, the flags and the faces say of each block', () => {
    const summary = breakingMember(1, 8).breaks[0]!.summary
    const events = (...kinds: ('pop-in' | 'stick-slip' | 'seating')[]) => ({
      breaks: [{ summary, events: kinds.map((kind) => ({ kind, percentOfPeak: 60 })) }],
    })
    expect(
      doubtsOf([
        breakingMember(1, 8, events('seating', 'pop-in', 'stick-slip')),
        breakingMember(2, 8, { summary: { woodFailurePercent: null } }),
        breakingMember(3, 8, { summary: { flags: ['uncalibrated', 'gap-at-peak'] } }),
        breakingMember(4, 8, { summary: { flags: ['premature-failure'] } }),
        breakingMember(5, 8, { fields: { areaMm2: null }, summary: { strengthMPa: null } }),
      ]),
    ).toEqual([
      [1, ['early-drop', 'stick-slip']],
      [2, ['not-assessed']],
      [3, ['flag']],
      [4, ['declared-premature']],
      [5, ['no-area']],
    ])
  })

  it('is a second result of a specimen', () => {
    const twice = breakingMember(1, 8)
    expect(doubtsOf([{ ...twice, specimen: { ...twice.specimen, results: 2 } }])).toEqual([[1, ['two-results']]])
  })

  it('is a block far from the others of its own group', () => {
    // R: (mean(x) - min(x)) / sd(x) = 2.740, above Grubbs' critical value 2.290 for n = 10
    const strengths = [8.1, 8.3, 8.2, 8.4, 8.0, 8.2, 8.3, 8.1, 8.2, 6.9]
    const others = [3, 3.1, 3.2].map((mpa, at) => breakingMember(20 + at, mpa, { fields: { exposure: 'bilge' } }))
    const members = strengths.map((mpa, at) => breakingMember(at + 1, mpa))
    expect(doubtsOf([...members, ...others])).toEqual([[10, ['low']]])
  })

  it('is a block weaker than half of the median where there are too few for a test', () => {
    expect(doubtsOf([breakingMember(1, 8), breakingMember(2, 3.9), breakingMember(3, 8.2)])).toEqual([[2, ['low']]])
    expect(doubtsOf([breakingMember(1, 8), breakingMember(2, 3.9)])).toEqual([])
  })
})

describe('what is to be broken again', () => {
  it('is what was set aside, and a break whose peak is not that of the block', () => {
    const { toRepeat, skipped, waiting } = sessionReport([
      breakingMember(1, 8, { summary: { setAside: 'slipped' } }),
      breakingMember(2, 8, { summary: { flags: ['interrupted'] } }),
      breakingMember(3, 8, { summary: { flags: ['glitch'] } }),
      breakingMember(4, null, { state: 'skipped' }),
      breakingMember(5, null),
      breakingMember(6, null, { state: 'withdrawn' }),
    ])
    expect(toRepeat.map(({ specimen }) => specimen.specimenId)).toEqual([1, 2])
    expect(skipped.map(({ specimen }) => specimen.specimenId)).toEqual([4])
    expect(waiting.map(({ specimen }) => specimen.specimenId)).toEqual([5])
  })
})
