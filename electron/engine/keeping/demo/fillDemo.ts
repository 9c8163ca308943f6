import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { Trouble } from '#contract/errors.ts'
import { listQuery } from '#contract/listQuery.ts'
import type { ImportMapping } from '#contract/specimens/importMapping.ts'
import type { Progress } from '#contract/tasks.ts'
import { dayOf } from '#domain/programme/calendar/calendarDay.ts'
import { plusMonths } from '#domain/programme/calendar/plusMonths.ts'
import { breakPull } from './breakPull.ts'
import { blocksOfPull, demoBlocks, type FilledDemo } from './demoBlocks.ts'
import { hangDemoLogger } from './demoClimate.ts'
import { demoLosses, demoMoved, demoPulledOn, demoPulls } from './demoPulls.ts'
import { demoAdhesives, demoAuthor, demoGluedOn } from './demoStudy.ts'
import { olderSheet } from './olderSheet.ts'
import { demoPlan, demoSpecimens, glueDemo, planDemo } from './planDemo.ts'
import { readPull } from './readPull.ts'

/** A block that an older program filled the demo with, when it had no study. */
const olderBlock = 'C1-L0-01'

/** What an archive holds of the demo study: nothing and nothing else, a part (the program was ended), all, or other records. */
export async function heldOfDemo(archive: Archive): Promise<'nothing' | 'part' | 'all' | 'other'> {
  const { specimens, breaks } = await archive.info()
  const planned = await demoPlan(archive)
  if (planned !== null) {
    // What another version of the program began is left as it is; the older results come last
    if (!planned.isOurs) return 'all'
    return (await archive.importRuns()).some(({ by }) => by === demoAuthor) ? 'all' : 'part'
  }
  if (specimens === 0 && breaks === 0) return 'nothing'
  const { rows } = await archive.listSpecimens(listQuery.parse({ text: olderBlock, limit: 10 }))
  return rows.some(({ fields }) => fields.demo && fields.number === olderBlock) ? 'all' : 'other'
}

/** What the demo is made with, of other subjects. */
export type DemoMakers = {
  /**
   * Calibrates the virtual amplifier where that was not done yet, signed and dated as said; resolves with the calibration that
   * is in force then.
   */
  calibrate(archive: Archive, author: string, atMs: number): Promise<Calibration | null>
  /** Brings the results of a sheet into the archive. */
  importSheet(
    archive: Archive,
    sheet: { fileName: string; bytes: Buffer; mapping: ImportMapping },
    said: { recordedAt: string; by: string; demo: boolean },
    signal: AbortSignal,
  ): Promise<unknown>
}

const msPerDay = 86_400_000

/**
 * Fills an empty archive with the demo study, or goes on where an earlier filling was ended. Its curves are no typed numbers:
 * a virtual amplifier is captured through the same path as a real one, at a clock that is stepped. On `today`, ISO 8601, the next
 * pull of the study is due. Rejects with Trouble
 * `conflict` when the archive holds the whole study or other records.
 */
export async function fillDemo(
  archive: Archive,
  program: string,
  makers: DemoMakers,
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
  const planned = await planDemo(archive, today, signal)
  await glueDemo(archive, planned)
  await hangDemoLogger(archive, planned.startOn, today, signal)
  const firstBreakDay = dayOf(demoPulledOn(planned.startOn, demoPulls[0]!))
  const calibration = await makers.calibrate(archive, demoAuthor, (firstBreakDay - 1) * msPerDay)
  const demo = { archive, program, calibration, ...planned, blocks: demoBlocks(await demoSpecimens(archive)) }
  const total = blocksForAmplifier(demo)
  let done = 0
  await doPulls(demo, () => {
    signal.throwIfAborted()
    onProgress({ task: 'demo', done: ++done, total })
  })
  const recordedAt = `${plusMonths(planned.startOn, importedAfterMonths)}T18:00:00.000Z`
  await makers.importSheet(archive, olderSheet(planned.startOn), { recordedAt, by: demoAuthor, demo: true }, signal)
}

/** The older results were brought in so long after the first glue-up. */
const importedAfterMonths = 26

/** How many blocks the press breaks with the amplifier. */
function blocksForAmplifier({ blocks }: Pick<FilledDemo, 'blocks'>): number {
  return demoPulls
    .filter(({ by }) => by === 'amplifier')
    .reduce((sum, pull) => sum + blocksOfPull(blocks, pull).length, 0)
}

/** Does what lies behind the study: each pull in its turn, and before it what was decided or lost by then. */
async function doPulls(demo: FilledDemo, onBroken: () => void): Promise<void> {
  for (const { by, ...pull } of demoPulls) {
    await movePull(demo, pull.ageMonths)
    await loseBlocks(demo, pull.ageMonths)
    if (by === 'amplifier') await breakPull(demo, pull, onBroken)
    else await readPull(demo, pull)
  }
}

/** Moves the pull that a person moved, once its age is come to. */
async function movePull({ archive, studyId, startOn }: FilledDemo, ageMonths: number): Promise<void> {
  const { code, reason } = demoMoved
  if (ageMonths !== demoMoved.ageMonths || (await archive.pullSources(studyId)).rows[0]!.decisions.length > 0) return
  const adhesive = demoAdhesives.find((one) => one.code === code)!
  await archive.addPullDecision({
    ...{ recordedAt: `${plusMonths(startOn, ageMonths)}T09:00:00.000Z`, by: demoAuthor, reason, studyId, ageMonths },
    ...{ gluedOn: demoGluedOn(startOn, adhesive), kind: 'moved', blocksPerSeries: null },
    dueOn: demoPulledOn(startOn, { adhesive, ageMonths }),
  })
}

/** A few blocks are withdrawn at once. */
const neverStopped = new AbortController().signal

/** Withdraws what was lost up to that age; a block that is withdrawn already stays so. */
async function loseBlocks({ archive, startOn, blocks }: FilledDemo, ageMonths: number): Promise<void> {
  for (const { months, reason, ...lost } of demoLosses) {
    if (months > ageMonths) continue
    const ids = blocks.flatMap(({ name, specimenId }) => (lost.blocks.includes(name) ? [specimenId] : []))
    const recordedAt = `${plusMonths(startOn, months)}T09:00:00.000Z`
    const signature = { by: demoAuthor, reason }
    await archive.withdrawSpecimens(() => {}, neverStopped, ids, 'withdrawn', recordedAt, signature)
  }
}
