import type { Calibration } from '#contract/calibration/calibration.ts'
import { Trouble, troubleFrom } from '#contract/errors.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import { type Bench, createBench } from './bench/bench.ts'
import { benchHandlers } from './bench/benchHandlers.ts'
import type { CaptureLogEntry } from './bench/capture/captureLog.ts'
import { breakHandlers } from './breaks/breakHandlers.ts'
import { curveViewHandlers } from './breaks/curveViewHandlers.ts'
import { overrulingHandlers } from './breaks/overrulingHandlers.ts'
import { evaluateRecovered } from './breaks/recoveredBreaks.ts'
import { calibrationHandlers } from './calibration/calibrationHandlers.ts'
import { calibrationInForce } from './calibration/calibrationInForce.ts'
import { calibrationRecordHandlers } from './calibration/calibrationRecordHandlers.ts'
import { createCheckWeightRun } from './calibration/checkWeight/checkWeightRun.ts'
import { checkWeightHandlers } from './calibration/checkWeightHandlers.ts'
import { createCalibrationDesk } from './calibration/routine/calibrationDesk.ts'
import type { Engine, EngineParts } from './core/engine.ts'
import { createEventHub } from './core/eventHub.ts'
import type { HandlerParts } from './core/handlerParts.ts'
import { createLongTasks } from './core/longTask.ts'
import { appHandlers } from './keeping/appHandlers.ts'
import { reevaluationHandlers } from './reevaluation/reevaluationHandlers.ts'
import { createReevaluations } from './reevaluation/reevaluations.ts'
import { specimenHandlers } from './specimens/specimenHandlers.ts'

export type EngineOptions = {
  /** Hears what the bench does, entry by entry. */
  log?: (entry: CaptureLogEntry) => void
  /** False: captures belong to no specimen. */
  withSpecimens?: boolean
}

/**
 * The use cases over the given parts. Breaks that a crash left behind are evaluated before it resolves. Rejects with a
 * Trouble when the archive cannot be read.
 */
export async function createEngine(
  parts: EngineParts,
  options: EngineOptions = {},
): Promise<Engine & { bench: Bench }> {
  const { archive, clock } = parts
  const hub = createEventHub()
  let preferences: Preferences = await archive.preferences()
  let inForce: Calibration | null = await calibrationInForce(archive)
  await evaluateRecovered(archive, clock)

  const bench = createBench({
    archive,
    clock,
    openSource: parts.openSource,
    program: parts.program,
    emit: hub.emit,
    log: options.log ?? (() => {}),
    preferences: () => preferences,
    calibration: () => inForce,
    withSpecimens: options.withSpecimens ?? true,
  })
  const tasks = createLongTasks()
  const calibrationParts = { archive, clock, bench, emit: hub.emit, inForce: () => inForce }
  const desk = createCalibrationDesk(calibrationParts)
  const check = createCheckWeightRun(calibrationParts)
  const reevaluations = createReevaluations({ archive, clock, tasks, emit: hub.emit, program: parts.program })

  const handlerParts: HandlerParts = {
    ...parts,
    bench,
    tasks,
    emit: hub.emit,
    preferences: () => preferences,
    async changePreferences(change) {
      if (change.nPerCount === 0)
        throw new Trouble(
          'invalid-input',
          'A scale of 0 N per count makes every force 0.',
          'Type N per count, or none.',
        )
      const given = Object.entries(change).filter(([, value]) => value !== undefined)
      preferences = await archive.setPreferences(Object.fromEntries(given))
      hub.emit('preferences.changed', preferences)
      bench.preferencesChanged()
      return preferences
    },
    inForce: () => inForce,
    async calibrationChanged() {
      inForce = await calibrationInForce(archive)
      bench.preferencesChanged()
    },
    async recordsChanged(specimenIds, breakIds) {
      hub.emit('records.changed', { specimenIds, breakIds })
      await bench.recordsChanged()
    },
  }
  await bench.recordsChanged().catch((thrown: unknown) => hub.emit('trouble', troubleFrom(thrown)))

  return {
    bench,
    handlers: {
      ...appHandlers(handlerParts),
      ...benchHandlers(handlerParts),
      ...specimenHandlers(handlerParts),
      ...breakHandlers(handlerParts),
      ...overrulingHandlers(handlerParts),
      ...curveViewHandlers(handlerParts),
      ...reevaluationHandlers(handlerParts, reevaluations),
      ...calibrationHandlers(desk),
      ...calibrationRecordHandlers(handlerParts, desk),
      ...checkWeightHandlers(handlerParts, check),
    },
    subscribe: hub.subscribe,
    async close() {
      await reevaluations.close()
      tasks.cancelAll()
      check.close()
      desk.close()
      await bench.close()
    },
  }
}
