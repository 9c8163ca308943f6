import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { addBreakingEvent, beginBreakingSession } from '#archive/programme/breakingSessions.ts'
import { specimensOfPulls } from '#archive/programme/orderToBreak.ts'
import { addPullDecision } from '#archive/programme/pullDecisions.ts'
import { pullSources } from '#archive/programme/pulls.ts'
import type { PullName } from '#contract/programme/pull.ts'
import { studyPulls } from '#domain/programme/calendar/studyPulls.ts'
import { glueBlocks, storeBlocks, storeStudy } from '../storedProgramme.ts'
import { archiveInMemory, morning, storeBreak } from '../storedStudy.ts'

let database: Database.Database
let studyId = 0
let spares: number[] = []
beforeEach(() => {
  database = archiveInMemory()
  studyId = storeStudy(database)
  const ages = [3, null, null, null]
  const blocks = storeBlocks(
    database,
    studyId,
    ages.map((ageMonths, breakingOrder) => ({ ageMonths, breakingOrder })),
  )
  spares = glueBlocks(database, studyId, blocks).slice(1)
})

const signed = { recordedAt: morning, by: 'bench' }
function add(ageMonths: number, blocksPerSeries = 1, gluedOn = '2031-03-01'): PullName {
  const pull = { studyId, gluedOn, ageMonths }
  addPullDecision(database, { ...signed, ...pull, reason: 'a flood', kind: 'added', dueOn: null, blocksPerSeries })
  return pull
}
/** Breaks so many specimens of a session of pulls, and ends it; returns all that were to be broken. */
function session(pulls: readonly PullName[], breaks: number): number[] {
  const asked = { startedAt: morning, by: 'bench', title: 'a look between', specimenIds: [], seed: 1 }
  const { breakingSessionId, specimenIds } = beginBreakingSession(database, { ...asked, pulls: [...pulls] })
  for (const specimenId of specimenIds.slice(0, breaks)) storeBreak(database, specimenId)
  addBreakingEvent(database, { ...signed, breakingSessionId, kind: 'ended', specimenId: null, note: '' })
  return specimenIds
}
const counted = (pull: PullName) =>
  pullSources(database, studyId)
    .rows.flatMap((source) => studyPulls(source, '2031-05-02'))
    .find((one) => one.gluedOn === pull.gluedOn && one.ageMonths === pull.ageMonths)!

describe('the spares of pulls that were added', () => {
  it('are others for each pull of one session, as the pulls are counted', () => {
    const pulls = [add(9), add(6)]
    expect(session(pulls, 1)).toEqual(spares.slice(0, 2))
    expect(pulls.map((pull) => counted(pull).blocks)).toEqual([
      { planned: 1, waiting: 0, broken: 1, lost: 0 },
      { planned: 1, waiting: 1, broken: 0, lost: 0 },
    ])
    expect(specimensOfPulls(database, pulls)).toEqual([[], [spares[1]]])
  })

  it('are not those that were broken outside every session of them', () => {
    storeBreak(database, spares[0]!)
    const pull = add(9)
    expect(counted(pull)).toMatchObject({ state: 'planned', blocks: { planned: 1, waiting: 1, broken: 0 } })
    expect(session([pull], 0)).toEqual([spares[1]])
    storeBreak(database, spares[2]!)
    expect(counted(pull).blocks).toMatchObject({ waiting: 1, broken: 0 })
  })

  it('are of the pull of the last session that they were in, where they were passed over in one before', () => {
    const first = add(9)
    session([first], 0)
    const second = add(6, 3)
    addPullDecision(database, {
      ...{ ...signed, ...first, reason: 'no time', kind: 'skipped', dueOn: null, blocksPerSeries: null },
    })
    session([second], 1)
    add(9)
    expect([first, second].map((pull) => counted(pull).blocks.broken)).toEqual([0, 1])
  })

  it('are taken by a pull at an age that the plan has for blocks of another day alone', () => {
    const later = '2031-03-08'
    const blocks = storeBlocks(database, studyId, [{ ageMonths: 0 }, { ageMonths: null }])
    const [, spare] = glueBlocks(database, studyId, blocks, later)
    const pull = add(3, 1, later)
    expect(counted(pull).blocks).toMatchObject({ planned: 1, waiting: 1 })
    expect(session([pull], 0)).toEqual([spare])
  })

  it('are read for pulls of several studies at once', () => {
    const pull = add(9)
    const other = storeStudy(database)
    const glued = glueBlocks(database, other, storeBlocks(database, other, [{ ageMonths: 3 }, { ageMonths: null }]))
    const decided = { gluedOn: '2031-03-01', ageMonths: 9, kind: 'added', dueOn: null, blocksPerSeries: 1 } as const
    addPullDecision(database, { ...signed, ...decided, studyId: other, reason: 'a flood' })
    const pulls = [
      { ...pull, studyId: other },
      { ...pull, studyId: other, ageMonths: 3 },
      { ...pull, gluedOn: null },
    ]
    expect(specimensOfPulls(database, pulls)).toEqual([[glued[1]], [glued[0]], [spares[0]]])
  })
})
