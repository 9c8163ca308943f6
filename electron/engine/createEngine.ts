import type { Calibration } from '#contract/calibration/calibration.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import type { Handlers } from '#contract/procedures.ts'
import { isTouched } from '#contract/topics.ts'
import { type Bench, createBench } from './bench/bench.ts'
import type { CaptureLogEntry } from './bench/capture/captureLog.ts'
import { benchHandlers } from './bench/handlers.ts'
import { breakHandlers } from './breaks/handlers.ts'
import { evaluateRecovered } from './breaks/recoveredBreaks.ts'
import { calibrationInForce } from './calibration/calibrationInForce.ts'
import { createCheckWeightRun } from './calibration/checkWeight/checkWeightRun.ts'
import { calibrationHandlers } from './calibration/handlers.ts'
import { createCalibrationDesk } from './calibration/routine/calibrationDesk.ts'
import { demoArchiveOf } from './core/demoArchive.ts'
import type { Engine, EngineParts } from './core/engine.ts'
import { createEventHub } from './core/eventHub.ts'
import type { HandlerParts } from './core/handlerParts.ts'
import { createLongTasks } from './core/longTask.ts'
import { openingTroubles } from './core/openingTroubles.ts'
import { readingArchive } from './core/readingArchive.ts'
import { deedsCatchUp, watchRecords } from './core/recordsWatch.ts'
import { demoMakers } from './demoMakers.ts'
import { climateHandlers } from './findings/climate/climateHandlers.ts'
import { climateThread } from './findings/climate/climateThread.ts'
import { findingsThread } from './findings/findingsThread.ts'
import { findingsHandlers } from './findings/handlers.ts'
import { overviewHandlers } from './findings/overviewHandlers.ts'
import { keepingHandlers } from './keeping/handlers.ts'
import { breakingHandlers } from './programme/breakingHandlers.ts'
import { catalogueHandlers } from './programme/catalogueHandlers.ts'
import { glueUpHandlers } from './programme/glueUpHandlers.ts'
import { labelHandlers } from './programme/labelHandlers.ts'
import { pullHandlers } from './programme/pullHandlers.ts'
import { studyHandlers } from './programme/studyHandlers.ts'
import { reevaluationHandlers } from './reevaluation/handlers.ts'
import { createReevaluations } from './reevaluation/reevaluations.ts'
import { settingsHandlers } from './settings/handlers.ts'
import { keepPreferences } from './settings/preferences.ts'
import { specimenHandlers } from './specimens/handlers.ts'
import { importHandlers } from './specimens/importHandlers.ts'
import { pictureHandlers } from './specimens/pictureHandlers.ts'

export type EngineOptions = {
  /** Hears what the bench does, entry by entry. */
  log?: (entry: CaptureLogEntry) => void
  /** False: captures belong to no specimen. */
  withSpecimens?: boolean
  /** The host opened the archive for the demo; false: it is a person's own. */
  demo?: boolean
}

const settingsChanged: TroubleMessage = {
  code: 'archive-damaged',
  message: 'The settings in this archive were damaged, or changed by another program.',
  hint: 'Rated load, typed scale and thresholds count as never set: enter them again under Settings.',
}
const noCalibration = 'The calibration in force cannot be read, so that forces are shown without it'

/**
 * The use cases over the given parts. Breaks that a crash left behind are evaluated before it resolves. What of the archive
 * cannot be read is told with the answer to `app.info`.
 */
export async function createEngine(
  parts: EngineParts,
  options: EngineOptions = {},
): Promise<Engine & { bench: Bench }> {
  const { archive, clock } = parts
  const hub = createEventHub()
  const opening = openingTroubles()
  const preferences = await keepPreferences(archive, (kept) => {
    hub.emit('preferences.changed', kept)
    bench.preferencesChanged()
  })
  if (!(await opening.orElse(archive.arePreferencesSound(), true, 'Settings cannot be checked')))
    opening.add(settingsChanged)
  let inForce: Calibration | null = await opening.orElse(calibrationInForce(archive), null, noCalibration)
  await opening.orElse(
    evaluateRecovered(archive, clock, opening.add),
    undefined,
    'What a crash cut short is not evaluated',
  )

  const bench = createBench({
    archive,
    clock,
    openSource: parts.openSource,
    program: parts.program,
    emit: hub.emit,
    log: options.log ?? (() => {}),
    preferences: preferences.now,
    calibration: () => inForce,
    withSpecimens: options.withSpecimens ?? true,
    demo: options.demo ?? false,
  })
  const tasks = createLongTasks()
  const calibrationParts = { archive, clock, bench, emit: hub.emit, inForce: () => inForce }
  const desk = createCalibrationDesk(calibrationParts)
  const check = createCheckWeightRun(calibrationParts)
  const reevaluations = createReevaluations({ archive, clock, tasks, emit: hub.emit, program: parts.program })

  const statistics = findingsThread()
  const climate = climateThread()
  const reading = readingArchive(archive, parts.program)

  const records = watchRecords(archive, hub.emit, async (written) => {
    if (isTouched(['calibrations'], written)) {
      const before = inForce
      inForce = await calibrationInForce(archive)
      if (inForce?.calibrationId !== before?.calibrationId) bench.preferencesChanged()
    }
    if (isTouched(['specimens', 'breaks', 'breakings'], written)) await bench.recordsChanged()
  })
  await opening.orElse(bench.recordsChanged(), undefined, 'Which specimen is next is not known')

  const handlerParts: HandlerParts = {
    ...parts,
    openingTrouble: opening.asOne(),
    ...{ reading, tasks, emit: hub.emit, demo: demoArchiveOf(archive, options.demo ?? false) },
  }
  const handlers: Handlers = {
    ...keepingHandlers(handlerParts, demoMakers),
    ...settingsHandlers(preferences),
    ...benchHandlers(handlerParts, bench, preferences.change),
    ...specimenHandlers(handlerParts),
    ...importHandlers(handlerParts, bench),
    ...studyHandlers(handlerParts),
    ...pictureHandlers(handlerParts),
    ...catalogueHandlers(handlerParts),
    ...glueUpHandlers(handlerParts),
    ...breakingHandlers(handlerParts, bench),
    ...labelHandlers(handlerParts),
    ...pullHandlers(handlerParts),
    ...breakHandlers(handlerParts),
    ...findingsHandlers(handlerParts, statistics),
    ...overviewHandlers(handlerParts),
    ...climateHandlers(handlerParts, climate),
    ...reevaluationHandlers(handlerParts, bench, reevaluations),
    ...calibrationHandlers(handlerParts, bench, desk, check),
  }

  return {
    bench,
    handlers: deedsCatchUp(handlers, records),
    subscribe: hub.subscribe,
    async close() {
      await reevaluations.close()
      tasks.cancelAll()
      await statistics.close()
      await climate.close()
      await reading.close()
      check.close()
      desk.close()
      await bench.close()
      await records.caughtUp()
      records.end()
    },
  }
}
