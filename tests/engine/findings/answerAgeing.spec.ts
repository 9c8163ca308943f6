import { expect, test } from 'vitest'
import { ageingAnswer, ageingQuestion } from '#contract/findings/ageing.ts'
import type { AgeingPart } from '#domain/findings/ageing/ageingParts.ts'
import { rememberLines } from '#domain/findings/lines/rememberedLines.ts'
import type { ObservedBreak } from '#domain/findings/observedBreak.ts'
import type { PullSource } from '#domain/programme/calendar/studyPulls.ts'
import { answerAgeing } from '#engine/findings/answerAgeing.ts'
import { plannedStudy } from '#tests/fakes/scripted/plannedStudies.ts'

const months = [0, 6, 12, 24]
const breaks: ObservedBreak[] = ['casein C1', 'epoxy E4', 'resorcinol R2'].flatMap((adhesive, a) =>
  months.flatMap((month, m) =>
    [0, 1, 2, 3].map((i) => ({
      ...{ specimenId: 100 * a + 10 * m + i + 1, breakId: 1, number: `${a}-${m}-${i}`, adhesive, exposure: 'loft' },
      startedAt: new Date(Date.UTC(2026, 3 + month, 20)).toISOString(),
      ...{ jointType: 'long grain to long grain', bondLineGapMm: 0, gluedOn: '2026-04-20', areaMm2: 600 },
      peakN: 6000 - (10 + 30 * a) * month + [120, -60, 40, -200][i]! * (1 + ((m + a) % 3)),
      ...{ woodFailurePercent: 20, setAside: null, simulated: false, strengthMPa: null, ageMonths: null },
      ...{ studyId: null, pullAgeMonths: null, board: `plank ${i}` },
    })),
  ),
)
const study = plannedStudy({ adhesives: ['casein C1', 'epoxy E4'], agesMonths: [0, 6, 12, 24, 60, 120] })
const ask = (question: object = {}, sources: PullSource[] = [study], memory = rememberLines<AgeingPart>()) =>
  answerAgeing(
    { observations: () => breaks, pullSources: () => ({ rows: sources }) },
    ageingQuestion.parse(question),
    memory,
    () => {},
  )

test('follows each series to the last age that a study plans for it, and names the ages to come', () => {
  const answer = ask()
  expect(ageingAnswer.parse(answer)).toEqual(answer)
  expect(answer.series.map(({ endMonths, upcomingMonths }) => [endMonths, upcomingMonths])).toEqual([
    [120, [60, 120]],
    [120, [60, 120]],
    // No study plans it: thirty years
    [360, []],
  ])
  expect(answer.series[0]!.below).toMatchObject({ ageMonths: 120, sharePercent: 80 })
  expect(answer.together!.series).toHaveLength(3)
  expect(answer.boards.map(({ ageMonths }) => ageMonths)).toEqual(months)
})

test('takes only what the filter lets through', () => {
  const { series, together } = ask({ filter: { adhesives: ['epoxy E4'] } })
  expect(series).toHaveLength(1)
  expect(together).toBeNull()
})

test('works nothing out again where nothing changed', () => {
  const memory = rememberLines<AgeingPart>()
  expect(ask({}, [study], memory).computed).toBe(3 + 1 + months.length)
  expect(ask({}, [study], memory).computed).toBe(0)
})
