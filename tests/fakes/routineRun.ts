import { type BenchModel, type BenchSamples, createBenchModel } from '#acquisition/virtual/benchModel.ts'
import { type Characteristic, curvedCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import { type CalibrationPlan, calibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { plannedForces } from '#domain/calibration/routinePlan.ts'
import { type CalibrationRoutine, createCalibrationRoutine } from '#engine/calibration/routine/calibrationRoutine.ts'
import { createSteppedClock } from '#engine/core/steppedClock.ts'

/** Cast-iron weights of class M2 as a shop has them, the set of the invented boatyard school. */
export function shopWeights(nominalsKg: readonly number[]): WeightEntry[] {
  return nominalsKg.map((nominalKg, index) => ({
    name: `${nominalKg} kg no. ${index + 1}`,
    nominalKg,
    conventionalMassKg: null,
    tolerance: { kind: 'oiml', class: 'M2' },
    density: { kind: 'material', material: 'cast iron' },
  }))
}

/** Five twenty-kilogram weights hung one after the other, at the latitude of an invented estuary. */
export function shopPlan(change: Partial<CalibrationPlan> = {}): CalibrationPlan {
  const weights = shopWeights([20, 20, 20, 20, 20])
  const names = weights.map(({ name }) => name)
  return calibrationPlan.parse({
    weights,
    steps: names.map((_, index) => names.slice(0, index + 1)),
    preloads: 0,
    conditions: { gravity: { kind: 'latitude', latitudeDeg: 54, heightM: 5 } },
    ...change,
  })
}

/** A cell whose capacity shop weights come near to, as bent and as wide as the virtual amplifier's own. */
export const smallCell: Characteristic = { ...curvedCharacteristic, capacityN: 1250, nPerCount: 0.001 }

/** A routine on a virtual bench, the person's hands included; samples are made as fast as they can be. */
export function routineOnBench(
  options: {
    seed?: number
    plan?: CalibrationPlan
    characteristic?: Characteristic
    noiseN?: number
    driftN?: number
    rateHz?: number
    /** True force over stated force. */
    forceError?: number
    /** Turns what the model says into what arrives. */
    reading?: (counts: number) => number
    /** How far a reading lies from the zero of the bench, N. */
    taredN?: (reading: number) => number | null
  } = {},
): {
  routine: CalibrationRoutine
  bench: BenchModel
  kept: { number: number; mean: number }[]
  /** Lets the stream run for so many seconds. */
  play(seconds: number): void
  hang(forceN: number): void
  /** Hangs the weights of the position at hand, waits until it was read, and says where the routine is then. */
  read(): string
  /** All positions from here to the review. */
  readAll(): void
} {
  const { plan = shopPlan(), rateHz = 80, forceError = 1, reading = (counts: number) => counts } = options
  const clock = createSteppedClock(Date.UTC(2031, 4, 6, 8))
  const bench = createBenchModel({
    scenario: 'idle',
    rateHz,
    seed: options.seed ?? 1,
    noiseN: options.noiseN ?? 0.05,
    driftN: options.driftN ?? 0.05,
    humN: 0.01,
    knocksPerHour: 0,
    characteristic: options.characteristic ?? smallCell,
  })
  const kept: { number: number; mean: number }[] = []
  const routine = createCalibrationRoutine({
    clock,
    plan,
    forces: plannedForces(plan, null),
    readingUnit: () => 'counts',
    taredN: options.taredN ?? (() => null),
    checkDevice() {},
    keep: (number, { mean }) => void kept.push({ number, mean }),
    changed() {},
  })
  const length = 16
  const samples: BenchSamples = {
    timeUs: new Float64Array(length),
    counts: new Float64Array(length),
    sequence: new Float64Array(length),
  }

  function play(seconds: number): void {
    for (let left = Math.round(seconds * rateHz); left > 0; ) {
      const made = bench.fill(samples, Number.POSITIVE_INFINITY)
      for (let i = 0; i < made; i++) routine.push(samples.timeUs[i]! / 1e6, reading(samples.counts[i]!))
      clock.step(made / rateHz)
      left -= made
    }
  }

  function read(): string {
    const { current, positions } = routine.state()
    bench.putWeights(positions[current!]!.forceN * forceError)
    play(1)
    routine.goOn()
    for (let s = 0; s < 200; s++) {
      const { phase } = routine.state()
      if (phase !== 'waiting-for-steady' && phase !== 'averaging') return phase
      play(0.5)
    }
    return routine.state().phase
  }

  return {
    routine,
    bench,
    kept,
    play,
    hang: (forceN) => bench.putWeights(forceN),
    read,
    readAll() {
      for (let step = 0; step < 500 && routine.state().phase !== 'review'; step++) read()
    },
  }
}
