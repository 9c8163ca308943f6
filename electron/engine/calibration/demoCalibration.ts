import { type BenchSamples, createBenchModel } from '#acquisition/virtual/benchModel.ts'
import { curvedCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { type CalibrationPlan, calibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import { assessmentChoices } from '#contract/calibration/calibrationRoutine.ts'
import { plannedForces } from '#domain/calibration/routinePlan.ts'
import { createSteppedClock } from '../core/steppedClock.ts'
import { calibrationInForce } from './calibrationInForce.ts'
import { type CalibrationRoutine, createCalibrationRoutine } from './routine/calibrationRoutine.ts'
import { calibrationToSave } from './routine/calibrationToSave.ts'

const rateHz = 80
const settleS = 2
/** No reading takes longer than this, or something is wrong with the plan, s. */
const longestReadingS = 120

/** Five weights one after the other on a lever, so that the verified range goes beyond what the demo's blocks bear. */
const plan: CalibrationPlan = calibrationPlan.parse({
  weights: [1, 2, 3, 4, 5].map((number) => ({
    name: `20 kg no. ${number}`,
    nominalKg: 20,
    tolerance: { kind: 'oiml', class: 'M2' },
    density: { kind: 'material', material: 'cast iron' },
  })),
  steps: [1, 2, 3, 4, 5].map((most) => Array.from({ length: most }, (_, index) => `20 kg no. ${index + 1}`)),
  decreasing: true,
  preloads: 1,
  conditions: {
    gravity: { kind: 'latitude', latitudeDeg: 54, heightM: 5 },
    leverRatio: 10,
    leverHalfWidthPercent: 0.05,
  },
  resolution: 1,
  temperatureStartC: 18,
  temperatureNote: 'sail loft',
})

/**
 * Calibrates the virtual amplifier of the demo, if it is not calibrated yet, and puts that in force. Its readings are no typed
 * numbers: the guided routine takes them from the stream of the virtual bench, at a clock that is stepped from `atMs` on.
 */
export async function calibrateDemo(archive: Archive, author: string, atMs: number): Promise<Calibration | null> {
  if ((await archive.calibrations()).rows.length > 0) return calibrationInForce(archive)
  const clock = createSteppedClock(atMs)
  const forces = plannedForces(plan, curvedCharacteristic.capacityN)
  const routine = createCalibrationRoutine({
    ...{ clock, plan, forces },
    readingUnit: () => 'counts',
    taredN: () => null,
    checkDevice() {},
    keep() {},
    changed() {},
  })
  takeReadings(routine, clock.step)
  const made = calibrationToSave(
    {
      ...{ routine, plan, forces },
      begunOn: { source: 'virtual amplifier: idle', device: 'virtual', readingUnit: 'counts' },
    },
    {
      choices: assessmentChoices.parse({ fitOver: 'all' }),
      ...{ name: 'Demo bench', by: author, dueOn: null, temperatureEndC: 18 },
      note: 'Invented: weights hung on the virtual bench through a lever.',
    },
    null,
    clock.instant(),
  )
  const stored = await archive.addCalibration(made, null)
  const decided = {
    calibrationId: stored.calibrationId,
    recordedAt: clock.instant(),
    by: author,
    reason: 'the demo begins with it',
  }
  await archive.addCalibrationDecision(decided)
  return stored
}

/** Does all that the routine asks for, until there is nothing left to read. */
function takeReadings(routine: CalibrationRoutine, pass: (seconds: number) => void): void {
  const bench = createBenchModel({
    ...{ scenario: 'idle', rateHz, seed: 1, knocksPerHour: 0 },
    characteristic: curvedCharacteristic,
  })
  const length = rateHz / 4
  const samples: BenchSamples = {
    timeUs: new Float64Array(length),
    counts: new Float64Array(length),
    sequence: new Float64Array(length),
  }
  const play = (seconds: number) => {
    for (let left = seconds; left > 0; left -= length / rateHz) {
      const made = bench.fill(samples)
      for (let i = 0; i < made; i++) routine.push(samples.timeUs[i]! / 1e6, samples.counts[i]!)
      pass(made / rateHz)
    }
  }
  for (let state = routine.state(); state.phase !== 'review'; state = routine.state()) {
    bench.putWeights(state.current === null ? 0 : state.positions[state.current]!.forceN)
    play(settleS)
    routine.goOn()
    for (let waitedS = 0; isReading(routine); waitedS += 1) {
      if (waitedS > longestReadingS) throw new TypeError('the reading of the demo calibration never became steady')
      play(1)
    }
  }
}

function isReading(routine: CalibrationRoutine): boolean {
  const { phase } = routine.state()
  return phase === 'waiting-for-steady' || phase === 'averaging' || phase === 'holding'
}
