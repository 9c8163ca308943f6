import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { listQuery } from '#contract/listQuery.ts'
import { studyPulls } from '#domain/programme/calendar/studyPulls.ts'
import { demoMakers } from '#engine/demoMakers.ts'
import { demoLosses, demoMoved, demoOverruled, demoSetAside } from '#engine/keeping/demo/demoPulls.ts'
import { demoAdhesives, demoStudyFields } from '#engine/keeping/demo/demoStudy.ts'
import { fillDemo, heldOfDemo } from '#engine/keeping/demo/fillDemo.ts'
import { demoNames } from '#tests/fakes/demoNames.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

const never = new AbortController().signal
const today = '2031-05-31'

/** An archive that goes away, as if the program were ended, at the given call of one of its methods. */
function endedAt(
  archive: Archive,
  method: 'appendSamples' | 'addAssessment' | 'addDecision' | 'addGlueUp' | 'allocateStudy' | 'addDialReadings',
  call: number,
) {
  let calls = 0
  const original = archive[method] as (...args: unknown[]) => Promise<unknown>
  const counted = (...args: unknown[]) =>
    ++calls < call ? original(...args) : Promise.reject(new Error('the program was ended'))
  return { ...archive, [method]: counted }
}

const fill = (archive: Archive, told: number[] = [], signal = never) =>
  fillDemo(archive, 'test', demoMakers, ({ done }) => told.push(done), signal, today)

/** Twelve blocks of six adhesives in two exposures, at the two ages that the amplifier broke; two of them were lost. */
const brokenByAmplifier = 12 * 6 * 2 * 2 - 2
/** The same at three ages; one of them was lost. */
const readFromDial = 12 * 6 * 2 * 3 - 1

async function expectWholeStudy(archive: Archive) {
  expect(await heldOfDemo(archive)).toBe('all')
  const rows = await breaksOf(archive)
  const complete = rows.filter(({ ending }) => ending === 'complete')
  expect(complete.length).toBe(brokenByAmplifier)
  expect(new Set(complete.map(({ number }) => number)).size).toBe(brokenByAmplifier)
  expect(complete.every(({ woodFailurePercent, outcome }) => woodFailurePercent !== null && outcome === 'break')).toBe(
    true,
  )
  const names = await demoNames(archive)
  const setAside = complete.filter((row) => row.setAside !== null).map(({ number }) => names.get(number!))
  expect(setAside.sort()).toEqual(Object.keys(demoSetAside).sort())
  for (const { number, setAsideCause, overruled, peakN } of complete) {
    expect(setAsideCause).toBe(demoSetAside[names.get(number!)!]?.cause ?? null)
    expect(overruled?.kind).toBe(demoOverruled[names.get(number!)!]?.kind)
    if (overruled !== null) expect(peakN).toBeLessThan(overruled.foundPeakN!)
  }
  // What was cut short counts for nothing.
  expect(rows.every(({ ending, setAside }) => ending === 'complete' || setAside !== null)).toBe(true)
  // Three of those broken were set aside and have no result, seven blocks were lost on the shelf
  const { counts } = await archive.study(1)
  const broken = brokenByAmplifier + readFromDial - 3
  const planned = 12 * 6 * 2 * 7 + 2 * 6 * 2
  expect(counts).toEqual({ allocated: planned, glued: planned, broken, lost: 10, waiting: planned - broken - 10 })
}

async function breaksOf(archive: Archive) {
  return (await archive.listBreaks(listQuery.parse({ limit: 1000 }))).rows
}

describe('fillDemo', () => {
  it.each([
    ['before its blocks are allocated', 'allocateStudy', 1],
    ['in the middle of its glue-ups', 'addGlueUp', 3],
    ['between a break and what was seen of it', 'addAssessment', 7],
    ['before a break is set aside', 'addDecision', 1],
    ['before a dial is read', 'addDialReadings', 2],
  ] as const)('goes on where it was ended %s', async (_where, method, call) => {
    await expect(fill(endedAt(home.archive, method, call))).rejects.toThrow('the program was ended')
    expect(await heldOfDemo(home.archive)).toBe('part')
    const told: number[] = []
    await fill(home.archive, told)
    await expectWholeStudy(home.archive)
    expect(told).toEqual(Array.from({ length: brokenByAmplifier }, (_, i) => i + 1))
    await expect(fill(home.archive)).rejects.toMatchObject({ code: 'conflict' })
  })

  it('sets aside what a crash recovered of a loading, and breaks that block again', async () => {
    const stopped = new AbortController()
    const stopAfterTwo = ({ done }: { done: number }) => {
      if (done === 2) stopped.abort()
    }
    await expect(fillDemo(home.archive, 'test', demoMakers, stopAfterTwo, stopped.signal, today)).rejects.toThrow()
    // The third block is in the press when the program is killed.
    const third = (await home.archive.pressQueue(null, 1)).rows[0]!
    const { header } = await home.archive.break(1)
    const { breakId: _breakId, ...next } = header
    const { breakId } = await home.archive.beginBreak({ ...next, specimenId: third.specimenId })
    await home.archive.appendSamples(breakId, {
      timeUs: Float64Array.of(0, 12_500),
      readings: Float64Array.of(48_213, 48_300),
    })
    await home.archive.close()
    const archive = await openArchive({ path: home.path, program: 'test' })
    try {
      expect((await archive.info()).recovered).toEqual([breakId])
      await fill(archive)
      await expectWholeStudy(archive)
      expect((await archive.break(breakId)).summary).toMatchObject({ ending: 'recovered', number: third.fields.number })
    } finally {
      await archive.close()
    }
  })

  it('makes study 1 a whole one: pulls of two years done, the next due, blocks lost, older results brought in, all of it simulated', async () => {
    const { archive } = home
    await fill(archive)
    await expectWholeStudy(archive)
    const [source] = (await archive.pullSources(1)).rows
    const pulls = studyPulls(source!, today)
    const states = (ageMonths: number) =>
      new Set(pulls.filter((pull) => pull.ageMonths === ageMonths).map(({ state }) => state))
    for (const ageMonths of [0, 3, 6, 12, 24]) expect(states(ageMonths)).toEqual(new Set(['done']))
    expect(states(36)).toEqual(new Set(['due', 'late']))
    expect(states(48)).toEqual(new Set(['planned']))
    expect(pulls.filter(({ decision }) => decision !== null).map(({ ageMonths }) => ageMonths)).toEqual([
      demoMoved.ageMonths,
    ])
    const withdrawn = (await archive.listSpecimens(listQuery.parse({ status: 'withdrawn' }))).rows
    const names = await demoNames(archive)
    expect(new Set(withdrawn.map(({ fields, withdrawn }) => `${names.get(fields.number)} ${withdrawn}`))).toEqual(
      new Set(demoLosses.flatMap(({ blocks, reason }) => blocks.map((name) => `${name} ${reason}`))),
    )
    const [older] = await archive.importRuns()
    expect(older).toMatchObject({ fileName: 'laps on end grain.xlsx', inUse: older!.results })
    const sessions = await archive.breakingSessions()
    expect(sessions).toHaveLength(2 * demoAdhesives.length)
    expect(
      sessions.every(({ endedAt, specimenIds, broken }) => endedAt !== null && broken === specimenIds.length),
    ).toBe(true)
    expect((await archive.observations()).every(({ simulated }) => simulated)).toBe(true)
    expect((await archive.info()).own).toBe(false)
  })

  it('leaves a demo that another version of the program planned as it is', async () => {
    const fields = demoStudyFields('2031-02-23')
    await home.archive.addStudy({ ...fields, agesMonths: [0, 3, 12] }, '2031-02-23T08:00:00.000Z', 'bench 1')
    expect(await heldOfDemo(home.archive)).toBe('all')
  })

  it('takes the demo that an older program filled, without a study, for whole', async () => {
    await addBlocks(home.archive, ['C1-L0-01'])
    expect(await heldOfDemo(home.archive)).toBe('all')
  })

  it('leaves an archive alone that holds other records', async () => {
    await addBlocks(home.archive, ['A-1'])
    expect(await heldOfDemo(home.archive)).toBe('other')
    await expect(fill(home.archive)).rejects.toMatchObject({ code: 'conflict' })
  })
})
