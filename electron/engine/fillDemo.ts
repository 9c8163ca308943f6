import { createVirtualSource } from '#acquisition/virtual/virtualSource.ts'
import type { Archive } from '#archive/archive.ts'
import { Trouble } from '#contract/errors.ts'
import type { Progress } from '#contract/records/archive.ts'
import { defaultPreferences, sourceChoice } from '#contract/records/settings.ts'
import { type Bench, createBench } from './bench.ts'
import {
  brokenOnMs,
  type DemoGroup,
  demoAssessment,
  demoAuthor,
  demoBlocks,
  demoGroups,
  demoNote,
  demoSetAside,
  demoStrengthMPa,
  gluedOnMs,
} from './demoStudy.ts'
import { createSteppedClock } from './steppedClock.ts'

/**
 * Fills an empty archive with the demo study. Its curves are no typed numbers: a virtual amplifier is captured through the
 * same path as a real one, at a clock that is stepped. Rejects with Trouble `conflict` when the archive holds records already.
 */
export async function fillDemo(
  archive: Archive,
  program: string,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<void> {
  const { specimens, breaks, path } = await archive.info()
  if (specimens > 0 || breaks > 0)
    throw new Trouble(
      'conflict',
      `The archive ${path} holds records already, and the demo study belongs in a new one.`,
      'Name a file that does not exist yet.',
    )
  const total = demoGroups.reduce((sum, group) => sum + group.broken, 0)
  let done = 0
  for (const group of demoGroups) {
    const gluedAt = new Date(gluedOnMs(group) + 10 * 3_600_000).toISOString()
    const blocks = await archive.addSpecimens(demoBlocks(group), gluedAt, demoAuthor)
    const ids = blocks.map(({ specimenId }) => specimenId)
    if (group.broken > 0)
      await breakGroup(archive, program, group, ids, () => {
        signal.throwIfAborted()
        onProgress({ task: 'demo', done: ++done, total })
      })
  }
}

/**
 * Device seconds in a second of the clock. The device's own time says when each sample was taken; a faster clock only makes
 * fewer and larger blocks on their way to the disk.
 */
const pace = 20
const stepS = 0.1
/** No block takes longer than this to seat, load, break and be cleared away, in seconds of the clock. */
const longestS = 240 / pace

async function breakGroup(
  archive: Archive,
  program: string,
  group: DemoGroup,
  ids: readonly number[],
  onBroken: () => void,
): Promise<void> {
  const clock = createSteppedClock(brokenOnMs(group), pace)
  const { broken, adhesive } = group
  const source = createVirtualSource(
    {
      scenario: adhesive.scenario,
      rateHz: 80,
      seed: 1 + demoGroups.indexOf(group),
      restS: [6, 14],
      knocksPerHour: 0,
      speed: pace,
      specimen: (drawn, number) => {
        const strengthMPa = demoStrengthMPa(group, number - 1)
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
    calibration: () => null,
    preferences: () => ({ ...defaultPreferences, handsFree: false }),
    withSpecimens: true,
  })
  try {
    await bench.connect(sourceChoice.parse({ kind: 'virtual', scenario: adhesive.scenario }))
    for (const [index, specimenId] of ids.slice(0, broken).entries()) {
      await bench.take(specimenId)
      breakId = null
      const startedS = clock.nowS()
      while (breakId === null) {
        if (clock.nowS() - startedS > longestS)
          throw new Error(`no break came of block ${index + 1} of ${adhesive.name}`)
        clock.step(stepS)
        if (bench.state().phase !== 'loading') await bench.written()
      }
      clock.step(stepS)
      await assess(archive, group, index, breakId, clock.instant())
      onBroken()
    }
  } finally {
    await closeBench(bench)
  }
}

async function assess(archive: Archive, group: DemoGroup, index: number, breakId: number, recordedAt: string) {
  await archive.addAssessment({ breakId, recordedAt, by: demoAuthor, note: demoNote, ...demoAssessment(group, index) })
  const { summary } = await archive.break(breakId)
  const reason = demoSetAside[summary.number ?? '']
  if (reason !== undefined)
    await archive.addDecision({ breakId, kind: 'set-aside', specimenId: null, by: demoAuthor, reason, recordedAt })
}

async function closeBench(bench: Bench): Promise<void> {
  await bench.disconnect()
  await bench.close()
}
