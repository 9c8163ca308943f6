import { expect, test } from 'vitest'
import { findingsQuestion } from '#contract/findings/procedures.ts'
import { rememberLines } from '#domain/findings/lines/rememberedLines.ts'
import type { ObservedBreak } from '#domain/findings/observedBreak.ts'
import { answerFindings } from '#engine/findings/answerFindings.ts'

const loads = [6000, 6600, 5400, 3000, 3300, 2700]
const observed: ObservedBreak[] = loads.map((peakN, i) => ({
  specimenId: i + 1,
  breakId: i + 11,
  startedAt: '2031-05-02T09:30:00.000Z',
  number: `B-${i + 1}`,
  adhesive: i < 3 ? 'casein C1' : 'epoxy E4',
  jointType: 'long grain to long grain',
  bondLineGapMm: 0,
  exposure: 'loft',
  gluedOn: '2031-04-20',
  areaMm2: 600,
  peakN,
  woodFailurePercent: 10 * i,
  setAside: null,
  simulated: false,
  strengthMPa: null,
  ageMonths: null,
  studyId: i % 3 === 0 ? 2 : null,
  pullAgeMonths: null,
  board: null,
}))
const archiveOf = (breaks: readonly ObservedBreak[]) => ({ observations: () => [...breaks] })
const ask = (question: object, breaks: readonly ObservedBreak[] = observed) =>
  answerFindings(archiveOf(breaks), findingsQuestion.parse(question), rememberLines(), () => {})

test('names the specimen and the break behind every result', () => {
  const { blocks } = ask({})
  expect(blocks.map(({ specimenId, breakId, strengthMPa }) => [specimenId, breakId, strengthMPa])).toEqual(
    loads.map((peakN, i) => [i + 1, i + 11, peakN / 600]),
  )
})

test('says of each key what its blocks have in common', () => {
  const { groups, lines } = ask({ options: { only: ['group-summary'] } })
  expect(groups.map(({ adhesive }) => adhesive)).toEqual(['casein C1', 'epoxy E4'])
  expect(lines).toMatchObject(groups.map(({ key }) => ({ kind: 'group-summary', group: key, n: 3 })))
})

test('takes only what the filter lets through', () => {
  const { groups, blocks } = ask({ filter: { adhesives: ['epoxy E4'] } })
  expect(groups).toHaveLength(1)
  expect(blocks.map(({ number }) => number)).toEqual(['B-4', 'B-5', 'B-6'])
  expect(ask({ filter: { agesMonths: [6] } }).blocks).toEqual([])
  expect(ask({ filter: { studyId: 2 } }).blocks.map(({ number }) => number)).toEqual(['B-1', 'B-4'])
})

test('has another hash of the data as soon as one result differs, and the same one else', () => {
  const changed = observed.map((one, i) => (i === 2 ? { ...one, woodFailurePercent: 25 } : one))
  expect(ask({}).dataSha256).toBe(ask({ options: { seed: 7 } }).dataSha256)
  expect(ask({}, changed).dataSha256).not.toBe(ask({}).dataSha256)
})
