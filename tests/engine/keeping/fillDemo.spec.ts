import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { listQuery } from '#contract/listQuery.ts'
import { calibrateDemo } from '#engine/calibration/demoCalibration.ts'
import { demoGroups, demoOverruled, demoSetAside } from '#engine/keeping/demoStudy.ts'
import { fillDemo, heldOfDemo } from '#engine/keeping/fillDemo.ts'
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
  method: 'appendSamples' | 'addAssessment' | 'addDecision' | 'addGlueUp' | 'allocateStudy',
  call: number,
) {
  let calls = 0
  const original = archive[method] as (...args: unknown[]) => Promise<unknown>
  const counted = (...args: unknown[]) =>
    ++calls < call ? original(...args) : Promise.reject(new Error('the program was ended'))
  return { ...archive, [method]: counted }
}

async function expectWholeStudy(archive: Archive) {
  expect(await heldOfDemo(archive)).toBe('all')
  const broken = demoGroups.reduce((sum, group) => sum + group.broken, 0)
  const { specimens } = await archive.info()
  expect(specimens).toBe(12 * demoGroups.length)
  const { rows } = await archive.listBreaks(listQuery.parse({ limit: 1000 }))
  const complete = rows.filter(({ ending }) => ending === 'complete')
  expect(complete.length).toBe(broken)
  expect(new Set(complete.map(({ number }) => number)).size).toBe(broken)
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
}

describe('fillDemo', () => {
  it.each([
    ['before its blocks are allocated', 'allocateStudy', 1],
    ['in a group that waits for its breaks', 'addGlueUp', 3],
    ['between a break and what was seen of it', 'addAssessment', 7],
    ['before a break is set aside', 'addDecision', 1],
  ] as const)(
    'goes on where it was ended %s',
    async (_where, method, call) => {
      await expect(
        fillDemo(endedAt(home.archive, method, call), 'test', calibrateDemo, () => {}, never, today),
      ).rejects.toThrow('the program was ended')
      expect(await heldOfDemo(home.archive)).toBe('part')
      const told: number[] = []
      await fillDemo(home.archive, 'test', calibrateDemo, ({ done }) => told.push(done), never, today)
      await expectWholeStudy(home.archive)
      expect(told).toEqual(Array.from({ length: 64 }, (_, i) => i + 1))
      await expect(fillDemo(home.archive, 'test', calibrateDemo, () => {}, never, today)).rejects.toMatchObject({
        code: 'conflict',
      })
    },
    60_000,
  )

  it('sets aside what a crash recovered of a loading, and breaks that block again', async () => {
    const stopped = new AbortController()
    const stopAfterTwo = ({ done }: { done: number }) => {
      if (done === 2) stopped.abort()
    }
    await expect(fillDemo(home.archive, 'test', calibrateDemo, stopAfterTwo, stopped.signal, today)).rejects.toThrow()
    // The third block is in the press when the program is killed.
    const third = (await home.archive.waitingSpecimens(null, 1)).rows[0]!
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
      await fillDemo(archive, 'test', calibrateDemo, () => {}, never, today)
      await expectWholeStudy(archive)
      expect((await archive.break(breakId)).summary).toMatchObject({ ending: 'recovered', number: third.fields.number })
    } finally {
      await archive.close()
    }
  })

  it('makes it study 1, planned, allocated and glued, with the next pull due', async () => {
    await fillDemo(home.archive, 'test', calibrateDemo, () => {}, never, today)
    const { current, counts } = await home.archive.study(1)
    expect(current.fields).toMatchObject({ demo: true, startOn: '2031-02-23' })
    // Three of those broken were set aside, and have no result
    expect(counts).toEqual({ allocated: 168, glued: 168, broken: 61, lost: 3, waiting: 104 })
  })

  it('takes the demo that an older program filled, without a study, for whole', async () => {
    await addBlocks(home.archive, ['C1-L0-01'])
    expect(await heldOfDemo(home.archive)).toBe('all')
  })

  it('leaves an archive alone that holds other records', async () => {
    await addBlocks(home.archive, ['A-1'])
    expect(await heldOfDemo(home.archive)).toBe('other')
    await expect(fillDemo(home.archive, 'test', calibrateDemo, () => {}, never, today)).rejects.toMatchObject({
      code: 'conflict',
    })
  })
})
