import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { addAssessment } from '#archive/breaks/assessments.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { keepFinding, keptFindings, newestKeptFinding } from '#archive/findings/keptFindings.ts'
import { reads } from '#archive/methods.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { findingsSettings } from '#contract/findings/keptFinding.ts'
import { findingsQuestion } from '#contract/findings/procedures.ts'
import { type RememberedLines, rememberLines } from '#domain/findings/lines/rememberedLines.ts'
import { answerFindings } from '#engine/findings/answerFindings.ts'
import { changesSince, keptRows, resultsNow } from '#engine/findings/keptFindings.ts'
import { archiveInMemory, morning, rampAndFall, specimenFields, storeBreak } from '../../archive/storedStudy.ts'

let database: Database.Database
let breakIds: number[]
const archive = {
  observations: () => reads.observations(database),
  keptFindings: () => keptFindings(database),
  keptFinding: (id: number) => newestKeptFinding(database, id),
}
const settings = findingsSettings.parse({})
const assess = (breakId: number, woodFailurePercent: number | null, note = '') =>
  addAssessment(database, {
    ...{ breakId, recordedAt: morning, by: 'Mara', woodFailurePercent, failurePattern: null, note },
  })
const setAside = (breakId: number) =>
  addDecision(database, {
    ...{ breakId, kind: 'set-aside', specimenId: null, recordedAt: morning, by: 'Mara', reason: 'slipped' },
  })
const keep = (name = 'Spring') =>
  keepFinding(
    database,
    null,
    { name, listed: true, settings, said: [], ...resultsNow(archive)(settings) },
    morning,
    '',
    '',
  ).keptFindingId

beforeEach(() => {
  database = archiveInMemory()
  const fields = ['casein C1', 'resorcinol R2', 'epoxy E4'].flatMap((adhesive, group) =>
    [1, 2, 3].map((number) =>
      specimenFields(`${adhesive} ${number}`, { adhesive, gluedOn: '2031-03-01', board: `${group}` }),
    ),
  )
  const specimens = addSpecimens(database, fields, morning, 'test')
  breakIds = specimens.map(({ specimenId }, i) =>
    storeBreak(database, specimenId, rampAndFall(500, 500_000 + 10_000 * i)),
  )
})

describe('a finding that was kept', () => {
  it('holds for as long as its results stay, whatever else is noted', () => {
    const id = keep()
    assess(breakIds[0]!, null, 'a knot beside the joint')
    expect(keptRows(archive).rows).toMatchObject([{ keptFindingId: id, blocks: 9, isStale: false }])
    expect(changesSince(archive, id)).toEqual({ came: [], went: [], changed: [] })
  })

  it('is stale once a result came, went or changed, and says which', () => {
    const id = keep()
    assess(breakIds[1]!, 80)
    setAside(breakIds[2]!)
    const [specimen] = addSpecimens(database, [specimenFields('late', { adhesive: 'epoxy E4' })], morning, 'test')
    const late = storeBreak(database, specimen!.specimenId)
    expect(keptRows(archive).rows).toMatchObject([{ isStale: true }])
    const { came, went, changed } = changesSince(archive, id)
    expect(came.map(({ breakId }) => breakId)).toEqual([late])
    expect(went).toEqual([])
    expect(changed.map(({ before, now }) => [now.breakId, before.woodFailurePercent, now.woodFailurePercent])).toEqual([
      [breakIds[1], null, 80],
      [breakIds[2], null, null],
    ])
    expect(changed[1]!.now.excludedBecause).toBe('slipped')
  })

  it('rests on the results that were asked for alone', () => {
    const only = findingsSettings.parse({ adhesive: 'epoxy E4' })
    const fields = { name: 'E4', listed: true, settings: only, said: [], ...resultsNow(archive)(only) }
    const { keptFindingId } = keepFinding(database, null, fields, morning, '', '')
    assess(breakIds[0]!, 80)
    expect(fields.blocks).toHaveLength(3)
    expect(changesSince(archive, keptFindingId).changed).toEqual([])
    assess(breakIds[8]!, 80)
    expect(changesSince(archive, keptFindingId).changed).toHaveLength(1)
  })

  it('is on no list where there is none', () => {
    expect(keptRows(archive)).toEqual({ rows: [] })
  })
})

describe('how much is done for a list of kept findings', () => {
  it('is one look at all results, however many there are and whatever became of what they rest on', () => {
    for (let i = 0; i < 12; i++) keep(`Finding ${i}`)
    assess(breakIds[1]!, 80)
    let looks = 0
    const observations = () => {
      looks += 1
      return archive.observations()
    }
    const { rows } = keptRows({ observations, keptFindings: archive.keptFindings })
    expect(rows.map(({ isStale }) => isStale)).toEqual(Array.from({ length: 12 }, () => true))
    expect(looks).toBe(1)
  })

  it('is one computation for all that choose the same results', () => {
    const restsOn = resultsNow(archive)
    const of = (change: object) => restsOn(findingsSettings.parse(change))
    const asked = [
      {},
      { asked: 'torn-wood', limitPercent: '50' },
      { asked: 'as-good', marginPercent: '5' },
      { adhesive: 'epoxy E4' },
    ]
    expect(new Set(asked.map(of)).size).toBe(2)
  })
})

describe('what is worked out again', () => {
  const ask = (memory: RememberedLines, change: object = {}) =>
    answerFindings(archive, findingsQuestion.parse(change), memory, () => {}).computed

  it('is nothing after a note on a block, one group after its torn wood was assessed, and no more than its result touches else', () => {
    const memory = rememberLines()
    const all = ask(memory)
    // notes of simulation, three groups, their one age, three series
    expect(all).toBe(1 + 3 + 1 + 3)
    assess(breakIds[4]!, null, 'a knot beside the joint')
    expect(ask(memory)).toBe(0)
    assess(breakIds[4]!, 80)
    expect(ask(memory)).toBe(1)
    // its group, the groups of its age beside each other, its series
    setAside(breakIds[4]!)
    expect(ask(memory)).toBe(3)
  })

  it('is as little where a page asks many questions at once', () => {
    const memory = rememberLines()
    const questions = [0.9, 0.91, 0.92, 0.93, 0.94, 0.95, 0.96].map((confidence) => ({ options: { confidence } }))
    for (const question of questions) ask(memory, question)
    assess(breakIds[4]!, 80)
    for (const question of questions) expect(ask(memory, question)).toBe(1)
  })
})
