import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import type { LoadingConditionsEntry } from '#contract/calibration/loading.ts'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { notANumber } from '#words/units/notANumber.ts'
import { readNumber } from '../../../widgets/typedNumber.ts'

/** The plan as typed: every number a text, so that nothing typed is lost while it cannot be read yet. */
export type PlanTexts = {
  steps: string[][]
  runs: string
  decreasing: boolean
  preloads: string
  gravityFrom: 'latitude' | 'typed'
  latitude: string
  height: string
  gravity: string
  gravityHalfWidth: string
  lever: 'none' | 'lever'
  leverRatio: string
  leverHalfWidth: string
  airDensity: string
  temperature: string
  temperatureNote: string
  averageS: string
  creepHoldS: string
}
export type PlanErrors = Partial<Record<keyof PlanTexts, string>>

export const emptyPlan: PlanTexts = {
  steps: [],
  runs: '3',
  decreasing: false,
  preloads: '3',
  gravityFrom: 'latitude',
  latitude: '',
  height: '0',
  gravity: '',
  gravityHalfWidth: '0.0005',
  lever: 'none',
  leverRatio: '',
  leverHalfWidth: '0.5',
  airDensity: '1.2',
  temperature: '',
  temperatureNote: '',
  averageS: '2',
  creepHoldS: '',
}

type Numeric = Exclude<keyof PlanTexts, 'steps' | 'decreasing' | 'gravityFrom' | 'lever' | 'temperatureNote'>
type Limits = { least: number; most: number; whole?: boolean; outside: string; missing: string | null; as: string }

const limits: Record<Numeric, Limits> = {
  runs: {
    least: 1,
    most: 10,
    whole: true,
    outside: 'From 1 to 10 runs; three are good practice.',
    missing: 'Write how many runs; three are good practice.',
    as: 'a whole number',
  },
  preloads: {
    least: 0,
    most: 10,
    whole: true,
    outside: 'From 0 to 10; three are good practice.',
    missing: 'Write how many; three are good practice.',
    as: 'a whole number',
  },
  latitude: {
    least: -90,
    most: 90,
    outside: 'From −90 (south) to 90 (north).',
    missing: 'Write the latitude of the bench; a map shows it. Half a degree is near enough.',
    as: 'degrees, as 53.4',
  },
  height: {
    least: -500,
    most: 10_000,
    outside: 'From −500 to 10 000 m.',
    missing: 'Write the height above the sea; 50 m is near enough.',
    as: 'metres',
  },
  gravity: {
    least: 9.76,
    most: 9.84,
    outside: 'Between 9.76 and 9.84 m/s² everywhere on earth.',
    missing: 'Write local gravity, or give latitude and height instead.',
    as: 'm/s², as 9.8123',
  },
  gravityHalfWidth: {
    least: 0,
    most: 0.05,
    outside: 'From 0 to 0.05 m/s².',
    missing: 'Write by how much it may be off.',
    as: 'm/s²',
  },
  leverRatio: {
    least: 1e-3,
    most: 1000,
    outside: 'Force on the cell over force of the weight, more than 0.',
    missing: 'Write force on the cell over force of the weight, or hang the weights on the cell itself.',
    as: 'a number, as 10',
  },
  leverHalfWidth: {
    least: 0,
    most: 50,
    outside: 'From 0 to 50 %.',
    missing: 'Write by how much the ratio may be off.',
    as: 'percent',
  },
  airDensity: {
    least: 0,
    most: 1.5,
    outside: 'From 0 to 1.5 kg/m³; 1.2 is usual.',
    missing: '1.2 kg/m³ is usual.',
    as: 'kg/m³, as 1.2',
  },
  temperature: { least: -60, most: 80, outside: 'From −60 to 80 °C.', missing: null, as: '°C' },
  averageS: {
    least: 0.5,
    most: 60,
    outside: 'From 0.5 to 60 s; two are enough for a quiet bench.',
    missing: 'Write how long to average; 2 s are enough for a quiet bench.',
    as: 'seconds',
  },
  creepHoldS: {
    least: 60,
    most: 600,
    outside: 'From 60 to 600 s, 300 is usual; empty: creep is not measured.',
    missing: null,
    as: 'seconds, as 300',
  },
}

/** What a form says of gravity, air and lever, or one clear sentence for each field that cannot be. */
export function readConditions(texts: PlanTexts): { conditions: LoadingConditionsEntry | null; errors: PlanErrors } {
  const errors: PlanErrors = {}
  const number = (key: Numeric) => readLimited(texts, key, errors) ?? 0
  const conditions: LoadingConditionsEntry = {
    gravity:
      texts.gravityFrom === 'latitude'
        ? { kind: 'latitude', latitudeDeg: number('latitude'), heightM: number('height'), ellipsoid: 'WGS 84' }
        : { kind: 'typed', gMPerS2: number('gravity'), halfWidthMPerS2: number('gravityHalfWidth') },
    airDensityKgPerM3: number('airDensity'),
    leverRatio: texts.lever === 'none' ? 1 : number('leverRatio'),
    leverHalfWidthPercent: texts.lever === 'none' ? 0 : number('leverHalfWidth'),
  }
  return { conditions: Object.keys(errors).length === 0 ? conditions : null, errors }
}

/** The plan that a form says, or one clear sentence for each field that cannot be. Only weights that are hung go with it. */
export function readPlan(
  texts: PlanTexts,
  weights: readonly WeightEntry[],
): { plan: CalibrationPlan; errors: null } | { plan: null; errors: PlanErrors } {
  const { conditions, errors } = readConditions(texts)
  const number = (key: Numeric) => readLimited(texts, key, errors)
  const runs = number('runs')
  const preloads = number('preloads')
  const averageS = number('averageS')
  const creepHoldS = number('creepHoldS')
  const temperatureStartC = number('temperature')
  const empty = texts.steps.findIndex((step) => step.length === 0)
  if (texts.steps.length === 0) errors.steps = 'Plan at least three steps; five or more show whether the line is bent.'
  else if (empty >= 0) errors.steps = `Step ${empty + 1} has no weight. Choose its weights, or take the step away.`
  if (conditions === null || Object.keys(errors).length > 0) return { plan: null, errors }
  const hung = new Set(texts.steps.flat())
  return {
    errors: null,
    plan: {
      weights: weights.filter(({ name }) => hung.has(name)),
      steps: texts.steps,
      runs: runs ?? 3,
      decreasing: texts.decreasing,
      preloads: preloads ?? 3,
      conditions,
      capacityN: null,
      resolution: null,
      temperatureStartC,
      temperatureNote: texts.temperatureNote,
      averageS: averageS ?? 2,
      steadyWithinS: 60,
      creepHoldS,
    },
  }
}

function readLimited(texts: PlanTexts, key: Numeric, errors: PlanErrors): number | null {
  const { least, most, whole, outside, missing, as } = limits[key]
  const typed = readNumber(texts[key])
  if (typed === undefined) errors[key] = notANumber(texts[key], as)
  else if (typed === null) {
    if (missing !== null) errors[key] = missing
    return null
  } else if (typed < least || typed > most || (whole === true && !Number.isInteger(typed))) errors[key] = outside
  return typed ?? null
}
