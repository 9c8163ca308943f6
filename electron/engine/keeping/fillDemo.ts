import { curvedCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import { createVirtualSource } from '#acquisition/virtual/virtualSource.ts'
import type { Archive } from '#archive/archive.ts'
import { sourceChoice } from '#contract/bench/source.ts'
import type { SetAsideCause } from '#contract/breaks/decision.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { Trouble } from '#contract/errors.ts'
import { listQuery } from '#contract/listQuery.ts'
import { defaultPreferences } from '#contract/settings/settings.ts'
import type { Progress } from '#contract/tasks.ts'
import { overrulable, pickedSample, prematureSample } from '#domain/strength/overruling.ts'
import { type Bench, createBench } from '../bench/bench.ts'
import { createSteppedClock } from '../core/steppedClock.ts'
import {
  brokenOnMs,
  type DemoGroup,
  demoAssessment,
  demoAuthor,
  demoBlockName,
  demoGroups,
  demoNote,
  demoOverruled,
  demoSetAside,
  demoStrengthMPa,
} from './demoStudy.ts'
import { demoPlan, demoSpecimens, glueGroup, planDemo } from './planDemo.ts'

/** A block that an older program filled the demo with, when it had no study. */
const olderBlock = 'C1-L0-01'

/** What an archive holds of the demo study: nothing and nothing else, a part (the program was ended), all, or other records. */
export async function heldOfDemo(archive: Archive): Promise<'nothing' | 'part' | 'all' | 'other'> {
  const { specimens, breaks } = await archive.info()
  const planned = await demoPlan(archive)
  // Groups are filled in order, and the last has no breaks: its blocks are the last that is written.
  if (planned !== null) return (await demoSpecimens(archive, demoGroups.at(-1)!)) === null ? 'part' : 'all'
  if (specimens === 0 && breaks === 0) return 'nothing'
  const { rows } = await archive.listSpecimens(listQuery.parse({ text: olderBlock, limit: 10 }))
  return rows.some(({ fields }) => fields.demo && fields.number === olderBlock) ? 'all' : 'other'
}

/**
 * Calibrates the virtual amplifier where that was not done yet, signed and dated as said; resolves with the calibration that is
 * in force then.
 */
export type CalibrateDemo = (archive: Archive, author: string, atMs: number) => Promise<Calibration | null>

/** On the day before the first breaks. */
const dayMs = 86_400_000

/**
 * Fills an empty archive with the demo study, or goes on where an earlier filling was ended. Its curves are no typed numbers:
 * a virtual amplifier is captured through the same path as a real one, at a clock that is stepped. On `today`, ISO 8601, the next
 * pull of the study is due. Rejects with Trouble
 * `conflict` when the archive holds the whole study or other records.
 */
export async function fillDemo(
  archive: Archive,
  program: string,
  calibrate: CalibrateDemo,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
  today: string,
): Promise<void> {
  const held = await heldOfDemo(archive)
  if (held === 'all' || held === 'other')
    throw new Trouble(
      'conflict',
      `The archive ${(await archive.info()).path} holds records already, and the demo study belongs in a new one.`,
      'Name a file that does not exist yet.',
    )
  const { studyId, startOn } = await planDemo(archive, today, signal)
  const calibration = await calibrate(archive, demoAuthor, brokenOnMs(startOn, demoGroups[0]!) - dayMs)
  const total = demoGroups.reduce((sum, group) => sum + group.broken, 0)
  let done = 0
  const onBroken = () => {
    signal.throwIfAborted()
    onProgress({ task: 'demo', done: ++done, total })
  }
  for (const group of demoGroups) {
    const specimens = (await demoSpecimens(archive, group)) ?? (await glueGroup(archive, studyId, startOn, group))
    const left: DemoBlock[] = []
    for (const [index, { specimenId }] of specimens.slice(0, group.broken).entries())
      if (await isBroken(archive, group, { index, specimenId })) onBroken()
      else left.push({ index, specimenId })
    const atMs = brokenOnMs(startOn, group)
    if (left.length > 0) await breakBlocks({ archive, program, calibration, atMs }, group, left, onBroken)
  }
}

/** A block of a group, by its place in it. */
type DemoBlock = { index: number; specimenId: number }

/** Whether a block was broken before; what an earlier filling left undone beside its breaks is done now. */
async function isBroken(archive: Archive, group: DemoGroup, { index, specimenId }: DemoBlock): Promise<boolean> {
  let broken = false
  for (const { breakId, ending, startedAt, woodFailurePercent, setAside } of (await archive.specimen(specimenId))
    .breaks) {
    if (ending === 'complete') {
      broken = true
      if (woodFailurePercent === null) await assess(archive, group, { index, specimenId }, breakId, startedAt)
    } else if (setAside === null) await setBreakAside(archive, breakId, cutShort, startedAt)
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
  {
    archive,
    program,
    calibration,
    atMs,
  }: { archive: Archive; program: string; calibration: Calibration | null; atMs: number },
  group: DemoGroup,
  blocks: readonly DemoBlock[],
  onBroken: () => void,
): Promise<void> {
  const clock = createSteppedClock(atMs, pace)
  const { adhesive } = group
  const source = createVirtualSource(
    {
      scenario: adhesive.scenario,
      rateHz: 80,
      seed: 1 + demoGroups.indexOf(group),
      restS: [6, 14],
      knocksPerHour: 0,
      speed: pace,
      characteristic: curvedCharacteristic,
      specimen: (drawn, number) => {
        const strengthMPa = demoStrengthMPa(group, blocks[number - 1]!.index)
        const loadingS = 8 + drawn.loadingS / 4
        return { ...drawn, strengthMPa, strengthN: strengthMPa * drawn.areaMm2, loadingS }
      },
    },
    clock,
  )
  let breakId: number | null = null
  const bench = createBench({
    archive,
    clock,
    openSource: () => source,
    program,
    emit: () => {},
    log: (entry) => {
      if (entry.event === 'break') breakId = entry.breakId
    },
    calibration: () => calibration,
    preferences: () => ({ ...defaultPreferences, handsFree: false }),
    withSpecimens: true,
    demo: true,
  })
  try {
    await bench.connect(sourceChoice.parse({ kind: 'virtual', scenario: adhesive.scenario }))
    for (const block of blocks) {
      await bench.take(block.specimenId)
      breakId = null
      const startedS = clock.nowS()
      while (breakId === null) {
        if (clock.nowS() - startedS > longestS)
          throw new Error(`no break came of block ${block.index + 1} of ${adhesive.name}`)
        clock.step(stepS)
        if (bench.state().phase !== 'loading') await bench.written()
      }
      clock.step(stepS)
      await assess(archive, group, block, breakId, clock.instant())
      onBroken()
    }
  } finally {
    await closeBench(bench)
  }
}

async function assess(archive: Archive, group: DemoGroup, block: DemoBlock, breakId: number, recordedAt: string) {
  const name = demoBlockName(group, block.index)
  const aside = demoSetAside[name]
  // First, so that an assessment says that all was done.
  if (aside !== undefined) await setBreakAside(archive, breakId, aside, recordedAt)
  if (name in demoOverruled) await overrule(archive, breakId, name, recordedAt)
  const seen = demoAssessment(group, block.index)
  await archive.addAssessment({ breakId, recordedAt, by: demoAuthor, note: demoNote, ...seen })
}

const cutShort = { cause: 'other', reason: 'the program was ended while the block was loaded' } as const

async function setBreakAside(
  archive: Archive,
  breakId: number,
  why: { cause: SetAsideCause; reason: string },
  recordedAt: string,
) {
  await archive.addDecision({ breakId, kind: 'set-aside', specimenId: null, by: demoAuthor, recordedAt, ...why })
}

/** The sample that was picked lies so long before the peak, s. */
const pickedBeforePeakS = 0.5

async function overrule(archive: Archive, breakId: number, name: string, recordedAt: string) {
  const { kind, reason } = demoOverruled[name]!
  const record = await archive.break(breakId)
  const curve = await archive.readCurve(breakId)
  const peakS = overrulable(record).result.peakTimeS ?? 0
  const sample =
    kind === 'peak-picked' ? pickedSample(record, curve, peakS - pickedBeforePeakS) : prematureSample(record, curve)
  await archive.addDecision({ breakId, kind, specimenId: null, by: demoAuthor, reason, sample, recordedAt })
}

async function closeBench(bench: Bench): Promise<void> {
  await bench.disconnect()
  await bench.close()
}
