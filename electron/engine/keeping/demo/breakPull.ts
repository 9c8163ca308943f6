// Held by tests/engine/keeping/demo/fillDemo.spec.ts.
import { curvedCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import { createVirtualSource } from '#acquisition/virtual/virtualSource.ts'
import { sourceChoice } from '#contract/bench/source.ts'
import type { BreakingRow } from '#contract/programme/breakingProcedures.ts'
import { defaultPreferences } from '#contract/settings/settings.ts'
import { dayOf } from '#domain/programme/calendar/calendarDay.ts'
import { type Bench, createBench } from '../../bench/bench.ts'
import { createSteppedClock, type SteppedClock } from '../../core/steppedClock.ts'
import { assessBreak, setCutShortAside } from './assessDemo.ts'
import { blocksOfPull, type DemoBlock, type FilledDemo } from './demoBlocks.ts'
import { demoStrengthMPa } from './demoJoints.ts'
import { type DemoPull, demoPulledOn, demoPulls } from './demoPulls.ts'
import { demoAuthor, demoGluedOn, demoNote } from './demoStudy.ts'

const msPerDay = 86_400_000
/** Pulls are broken from half past one on, ms of the day. */
const beginsMs = 13.5 * 3_600_000

/**
 * Breaks a pull on the virtual bench in a breaking session of its own, or goes on where an earlier filling was ended. `onBroken`
 * is called for each of its blocks that is broken.
 */
export async function breakPull(demo: FilledDemo, pull: DemoPull, onBroken: () => void): Promise<void> {
  const { archive } = demo
  const atMs = dayOf(demoPulledOn(demo.startOn, pull)) * msPerDay + beginsMs
  const { session, isNew } = await sessionOf(demo, pull, new Date(atMs).toISOString())
  const ofPull = new Map(blocksOfPull(demo.blocks, pull).map((block) => [block.specimenId, block]))
  const waiting: DemoBlock[] = []
  for (const specimenId of session.specimenIds) {
    const block = ofPull.get(specimenId)!
    if (!isNew && (await brokenBefore(demo, block))) onBroken()
    else waiting.push(block)
  }
  const clock = createSteppedClock(atMs, pace)
  if (waiting.length > 0) await breakBlocks(demo, pull, waiting, clock, onBroken)
  if (session.endedAt !== null) return
  const { breakingSessionId } = session
  const recordedAt = clock.instant()
  const ended = {
    breakingSessionId,
    kind: 'ended',
    specimenId: null,
    recordedAt,
    by: demoAuthor,
    note: demoNote,
  } as const
  await archive.addBreakingEvent(ended)
}

/** The session in which a pull is broken; begun where it was not. */
async function sessionOf(
  demo: FilledDemo,
  pull: DemoPull,
  startedAt: string,
): Promise<{ session: BreakingRow; isNew: boolean }> {
  const { archive, studyId, startOn } = demo
  const name = { studyId, gluedOn: demoGluedOn(startOn, pull.adhesive), ageMonths: pull.ageMonths }
  const isOfPull = ({ pulls }: BreakingRow) =>
    pulls.some(({ gluedOn, ageMonths }) => gluedOn === name.gluedOn && ageMonths === name.ageMonths)
  const begun = (await archive.breakingSessions()).find(isOfPull)
  if (begun !== undefined) return { session: begun, isNew: false }
  const title = `${pull.adhesive.name}, ${pull.ageMonths === 0 ? 'as made' : `${pull.ageMonths} months`}`
  const asked = { startedAt, by: demoAuthor, title, pulls: [name], specimenIds: [], seed: demoPulls.length }
  return { session: await archive.beginBreakingSession(asked), isNew: true }
}

/** Whether a block was broken before; what an earlier filling left undone beside its breaks is done now. */
async function brokenBefore({ archive }: FilledDemo, block: DemoBlock): Promise<boolean> {
  const { breaks } = await archive.specimen(block.specimenId)
  let broken = false
  for (const { breakId, ending, startedAt, woodFailurePercent, setAside } of breaks) {
    if (ending === 'complete') {
      broken = true
      if (woodFailurePercent === null) await assessBreak(archive, block, breakId, startedAt)
    } else if (setAside === null) await setCutShortAside(archive, breakId, startedAt)
  }
  return broken
}

/**
 * Device seconds in a second of the clock. The device's own time says when each sample was taken; a faster clock only makes
 * fewer and larger blocks on their way to the disk.
 */
const pace = 20
const stepS = 0.1
/** No block takes longer than this to seat, load, break and be cleared away, in seconds of the clock. */
const longestS = 240 / pace

async function breakBlocks(
  demo: FilledDemo,
  pull: DemoPull,
  blocks: readonly DemoBlock[],
  clock: SteppedClock,
  onBroken: () => void,
): Promise<void> {
  const { archive, program, calibration } = demo
  let breakId: number | null = null
  const bench = createBench({
    ...{ archive, clock, program, withSpecimens: true, demo: true },
    openSource: () => pressOf(pull, blocks, clock),
    emit: () => {},
    log: (entry) => {
      if (entry.event === 'break') breakId = entry.breakId
    },
    calibration: () => calibration,
    preferences: () => ({ ...defaultPreferences, handsFree: false }),
  })
  try {
    await bench.connect(sourceChoice.parse({ kind: 'virtual', scenario: pull.adhesive.scenario }))
    for (const block of blocks) {
      await bench.take(block.specimenId)
      breakId = null
      const startedS = clock.nowS()
      while (breakId === null) {
        if (clock.nowS() - startedS > longestS) throw new Error(`no break came of block ${block.name}`)
        clock.step(stepS)
        if (bench.state().phase !== 'loading') await bench.written()
      }
      clock.step(stepS)
      await assessBreak(archive, block, breakId, clock.instant())
      onBroken()
    }
  } finally {
    await closeBench(bench)
  }
}

/** Fewer readings of the later pulls keep the first start quick; strokes of a hand pump are too fast for that. */
const rateHz = ({ ageMonths, adhesive }: DemoPull) => (ageMonths === 0 || adhesive.scenario === 'hand-pumped' ? 80 : 40)

/** The virtual press, which finds in each block the strength that was made up for it. */
function pressOf(pull: DemoPull, blocks: readonly DemoBlock[], clock: SteppedClock) {
  return createVirtualSource(
    {
      ...{ scenario: pull.adhesive.scenario, rateHz: rateHz(pull), restS: [6, 14], knocksPerHour: 0, speed: pace },
      seed: 1 + demoPulls.findIndex((one) => one.adhesive === pull.adhesive && one.ageMonths === pull.ageMonths),
      characteristic: curvedCharacteristic,
      specimen: (drawn, number) => {
        const { group, index, board, areaMm2 } = blocks[number - 1]!
        const strengthMPa = demoStrengthMPa(group, index, board)
        const strengthN = strengthMPa * areaMm2!
        return { ...drawn, strengthMPa, areaMm2: areaMm2!, strengthN, loadingS: 8 + drawn.loadingS / 4 }
      },
    },
    clock,
  )
}

async function closeBench(bench: Bench): Promise<void> {
  await bench.disconnect()
  await bench.close()
}
