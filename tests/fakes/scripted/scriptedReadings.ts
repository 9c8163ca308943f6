import type { Calibration } from '#contract/calibration/calibration.ts'
import { type CalibrationPlan, calibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import type { RoutinePosition } from '#contract/calibration/calibrationRoutine.ts'
import type { CalibrationReading, CalibrationRow } from '#contract/calibration/reading.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { polynomialAt } from '#domain/calibration/fit/polynomial.ts'
import { checkedWeights, plannedForces, routinePositions } from '#domain/calibration/routinePlan.ts'
import { creepOf, zeroReturns } from '#domain/calibration/steps/creep.ts'

/** The kept set and the plan of the invented boatyard school. */
export const scriptedPlan: CalibrationPlan = calibrationPlan.parse({
  weights: [
    weight('2 kg', 2),
    weight('5 kg', 5),
    weight('10 kg', 10),
    weight('20 kg', 20),
    { ...weight('20 kg b', 20), conventionalMassKg: 19.9985, tolerance: { kind: 'own', halfWidthKg: 0.002 } },
  ],
  steps: [
    ['5 kg'],
    ['10 kg'],
    ['5 kg', '10 kg'],
    ['5 kg', '20 kg'],
    ['20 kg', '20 kg b'],
    ['2 kg', '5 kg', '10 kg', '20 kg', '20 kg b'],
  ],
  runs: 3,
  decreasing: true,
  conditions: { gravity: { kind: 'latitude', latitudeDeg: 53.4, heightM: 12 } },
  temperatureStartC: 14.5,
  temperatureNote: 'heater off since morning',
})

function weight(name: string, nominalKg: number) {
  return {
    name,
    nominalKg,
    conventionalMassKg: null,
    tolerance: { kind: 'oiml', class: 'M1' },
    density: { kind: 'material', material: 'cast iron' },
  } as const
}

/** Every position of a plan, ahead. */
export function scriptedPositions(plan: CalibrationPlan): RoutinePosition[] {
  return routinePositions(plan, plannedForces(plan, null))
}

/**
 * What an invented, slightly bent and hysteretic cell reads at a position: counts, repeatable to about two of them.
 * `slopeShare` and `zeroCounts` make it another cell, or the same one years later.
 */
export function scriptedReading(
  position: Pick<RoutinePosition, 'run' | 'direction' | 'forceN' | 'weights'>,
  index: number,
  cell: { slopeShare?: number; zeroCounts?: number } = {},
): CalibrationReading {
  const { run, direction, forceN, weights } = position
  const flutter = Math.sin(12.9898 * (index + 1) + 78.233 * run) * 9
  const wave = 21 * Math.sin(forceN / 70)
  const hysteresis = direction === 'down' && forceN > 0 ? 9 * Math.sin((Math.PI * forceN) / 620) : 0
  const mean =
    8120 +
    (cell.zeroCounts ?? 0) +
    83.1 * (1 + (cell.slopeShare ?? 0)) * forceN +
    0.0009 * forceN ** 2 +
    wave +
    flutter +
    hysteresis
  return {
    run,
    direction,
    weights,
    forceN,
    mean,
    sd: 2.4 + 0.3 * Math.sin(index),
    count: 160,
    takenAt: new Date(Date.UTC(2026, 4, 11, 9, 0, 14 * index)).toISOString(),
    standing: 'used',
    replacedBy: null,
  }
}

/** The rows of readings in the order of the routine: a replaced one gives its place to the one that replaced it. */
export const rowsOf = (readings: readonly CalibrationReading[]): CalibrationRow[] =>
  readings
    .filter((_, index) => !readings.some(({ replacedBy }) => replacedBy === index))
    .map((reading) => (reading.replacedBy === null ? reading : readings[reading.replacedBy]!))
    .filter(({ standing }) => standing === 'used')
    .map(({ run, direction, forceN, mean }) => ({ run, direction, forceN, reading: mean }))

/** A stored calibration of that cell, with one reading that was repeated. */
export function scriptedCalibration(
  calibrationId: number,
  change: { name: string; madeAt: string; dueOn: string | null; slopeShare?: number; zeroCounts?: number },
): Calibration {
  const forces = plannedForces(scriptedPlan, null)
  const readings = scriptedPositions(scriptedPlan).map((position, index) => scriptedReading(position, index, change))
  const repeated = readings.findIndex(({ run, forceN }) => run === 2 && forceN > 0)
  readings.push({ ...readings[repeated]!, mean: readings[repeated]!.mean + 0.6 })
  readings[repeated] = {
    ...readings[repeated]!,
    mean: readings[repeated]!.mean - 31,
    standing: 'replaced',
    replacedBy: readings.length - 1,
  }
  const rows = rowsOf(readings)
  const { conditions } = scriptedPlan
  const assessment = calibrationOf(rows, { fitOver: 'up', resolution: 6, creepShare: 3e-4, ...sharesOf() })
  const toForceN = (reading: number) => polynomialAt(assessment.result.coefficients, reading)
  const highest = rows.reduce((most, row) => (row.forceN > most.forceN ? row : most))
  const held = { run: 3, loadN: highest.forceN, fromS: 30, toS: 300, fromReading: highest.reading }
  const toReading = highest.reading + 3e-4 * (highest.reading - rows[0]!.reading)
  return {
    calibrationId,
    name: change.name,
    madeAt: change.madeAt,
    by: 'bench 1',
    supersedes: calibrationId > 1 ? calibrationId - 1 : null,
    dueOn: change.dueOn,
    source: 'virtual amplifier: mixed',
    device: 'virtual',
    readingUnit: 'counts',
    circumstances: {
      gravity: conditions.gravity,
      gMPerS2: forces.gMPerS2,
      airDensityKgPerM3: conditions.airDensityKgPerM3,
      leverRatio: 1,
      leverHalfWidthPercent: 0,
      capacityN: 20_000,
      preloads: 3,
      resolution: 6,
      temperatureStartC: 14.5,
      temperatureEndC: 15,
      temperatureNote: scriptedPlan.temperatureNote,
    },
    weights: checkedWeights(scriptedPlan.weights),
    readings,
    rows,
    creep: [creepOf({ ...held, toReading }, toForceN), ...zeroReturns(rows, toForceN)],
    assessment,
    note: 'Weights from the school’s rigging loft.',
  }
}

/** What the weights of the plan add to the uncertainty. */
export function sharesOf() {
  const { gravityShare, steps } = plannedForces(scriptedPlan, null)
  return {
    gravityShare,
    weightsShare: Math.max(...steps.map((step) => step.weightsShare)),
    buoyancyShare: Math.max(...steps.map((step) => step.buoyancyShare)),
  }
}
