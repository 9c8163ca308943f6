import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import type { LoadingConditionsEntry } from '#contract/calibration/loading.ts'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { writeFixed } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { type FieldUnit, noUnit, readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../../../parts/forms/typedTexts.ts'

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

const usualAirKgPerM3 = 1.2

/** What nobody has changed yet, in SI units. */
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
  airDensity: String(usualAirKgPerM3),
  temperature: '',
  temperatureNote: '',
  averageS: '2',
  creepHoldS: '',
}

type Numeric = Exclude<keyof PlanTexts, 'steps' | 'decreasing' | 'gravityFrom' | 'lever' | 'temperatureNote'>
/** `least`, `most`: as stored; `outside` is handed both as they are shown. */
type Limits = {
  least: number
  most: number
  unit: (quantities: Quantities) => FieldUnit
  whole?: boolean
  outside(least: string, most: string, quantities: Quantities): string
  missing: string | null
  as: string
}

const count = () => noUnit
const seconds = () => ({ unit: 's', factor: 1 })
const percent = () => ({ unit: '%', factor: 1 })
const from = (least: string, most: string) => `From ${least} to ${most}.`

const limits: Record<Numeric, Limits> = {
  runs: {
    least: 1,
    most: 10,
    unit: count,
    whole: true,
    outside: () => 'From 1 to 10 runs; three are good practice.',
    missing: 'Write how many runs; three are good practice.',
    as: 'a whole number',
  },
  preloads: {
    least: 0,
    most: 10,
    unit: count,
    whole: true,
    outside: () => 'From 0 to 10; three are good practice.',
    missing: 'Write how many; three are good practice.',
    as: 'a whole number',
  },
  latitude: {
    least: -90,
    most: 90,
    unit: () => ({ unit: '°', factor: 1 }),
    outside: () => 'From −90 (south) to 90 (north).',
    missing: 'Write the latitude of the bench; a map shows it. Half a degree is near enough.',
    as: 'degrees, as 53.4',
  },
  height: {
    least: -500,
    most: 10_000,
    unit: ({ height }) => height,
    outside: from,
    missing: 'Write the height above the sea, to the nearest contour line of a map.',
    as: 'the height above the sea',
  },
  gravity: {
    least: 9.76,
    most: 9.84,
    unit: ({ acceleration }) => acceleration,
    outside: (least, most) => `Between ${least} and ${most} everywhere on earth.`,
    missing: 'Write local gravity, or give latitude and height instead.',
    as: 'local gravity',
  },
  gravityHalfWidth: {
    least: 0,
    most: 0.05,
    unit: ({ acceleration }) => acceleration,
    outside: from,
    missing: 'Write by how much it may be off.',
    as: 'by how much it may be off',
  },
  leverRatio: {
    least: 1e-3,
    most: 1000,
    unit: count,
    outside: () => 'Force on the cell over force of the weight, more than 0.',
    missing: 'Write force on the cell over force of the weight, or hang the weights on the cell itself.',
    as: 'a number, as 10',
  },
  leverHalfWidth: {
    least: 0,
    most: 50,
    unit: percent,
    outside: () => 'From 0 to 50 %.',
    missing: 'Write by how much the ratio may be off.',
    as: 'percent',
  },
  airDensity: {
    least: 0,
    most: 1.5,
    unit: ({ density }) => density,
    outside: (least, most, { density }) => `From ${least} to ${most}; ${density.number(usualAirKgPerM3)} is usual.`,
    missing: 'Write the density of the air; what stood here is usual.',
    as: 'the density of the air',
  },
  temperature: {
    least: -60,
    most: 80,
    unit: ({ temperature }) => temperature,
    outside: from,
    missing: null,
    as: 'the temperature',
  },
  averageS: {
    least: 0.5,
    most: 60,
    unit: seconds,
    outside: () => 'From 0.5 to 60 s; two are enough for a quiet bench.',
    missing: 'Write how long to average; 2 s are enough for a quiet bench.',
    as: 'seconds',
  },
  creepHoldS: {
    least: 60,
    most: 600,
    unit: seconds,
    outside: () => 'From 60 to 600 s, 300 is usual; empty: creep is not measured.',
    missing: null,
    as: 'seconds, as 300',
  },
}

/** The fields whose unit follows the units of the program. */
export const planUnits: UnitFields<keyof PlanTexts> = {
  height: limits.height.unit,
  gravity: limits.gravity.unit,
  gravityHalfWidth: limits.gravityHalfWidth.unit,
  airDensity: limits.airDensity.unit,
  temperature: limits.temperature.unit,
}

/** What a form says of gravity, air and lever, or one clear sentence for each field that cannot be. `texts`: as they are read. */
export function readConditions(
  texts: PlanTexts,
  quantities: Quantities,
): { conditions: LoadingConditionsEntry | null; errors: PlanErrors } {
  const errors: PlanErrors = {}
  const number = (key: Numeric) => readLimited(texts, key, quantities, errors) ?? 0
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
  quantities: Quantities,
): { plan: CalibrationPlan; errors: null } | { plan: null; errors: PlanErrors } {
  const { conditions, errors } = readConditions(texts, quantities)
  const number = (key: Numeric) => readLimited(texts, key, quantities, errors)
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

function readLimited(texts: PlanTexts, key: Numeric, quantities: Quantities, errors: PlanErrors): number | null {
  const { least, most, whole, outside, missing, as } = limits[key]
  const unit = limits[key].unit(quantities)
  const wanted = key in planUnits ? `${as} ${inUnit(unit.unit)}` : as
  const read = readQuantity(texts[key], unit, wanted)
  if ('error' in read) {
    errors[key] = read.error
    return null
  }
  const { stored } = read
  if (stored === null) {
    if (missing !== null) errors[key] = missing
  } else if (stored < least || stored > most || (whole === true && !Number.isInteger(stored)))
    errors[key] = outside(...boundsIn(unit, least, most), quantities)
  return stored
}

/** Both bounds as they are shown, the unit behind the second; in other units to three digits, which is near enough for a bound. */
function boundsIn({ unit, factor, zeroAt = 0 }: FieldUnit, least: number, most: number): [string, string] {
  const shown = (stored: number) => {
    const value = Number((stored * factor + zeroAt).toPrecision(factor === 1 ? 12 : 3))
    return Number.isInteger(value) ? writeFixed(value, 0) : String(value).replace('-', '−')
  }
  return [shown(least), `${shown(most)} ${unit}`]
}
