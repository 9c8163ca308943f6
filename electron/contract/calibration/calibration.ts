import * as z from 'zod'
import { finite, id, isoDate, isoInstant, positive, readingUnit } from './force.ts'

export const loadDirection = z.enum(['up', 'down'])
export type LoadDirection = z.infer<typeof loadDirection>

/** One mean reading at one force: a line of a calibration CSV. */
export const calibrationRow = z.strictObject({
  run: z.int().positive(),
  direction: loadDirection,
  forceN: finite,
  reading: finite,
})
export type CalibrationRow = z.infer<typeof calibrationRow>

/** Class in the manner of ISO 7500-1; `none` where no class is reached or none can be told. */
export const accuracyClass = z.enum(['0.5', '1', '2', '3', 'none'])
export type AccuracyClass = z.infer<typeof accuracyClass>

/** Errors of one step, percent of its force (f0: percent of the highest force); null where the data cannot give it. */
export const calibrationStep = z.strictObject({
  forceN: positive,
  /** Relative accuracy error. */
  q: finite.nullable(),
  /** Repeatability. */
  b: finite.nullable(),
  /** Reversibility. */
  v: finite.nullable(),
  /** Zero error. */
  f0: finite.nullable(),
  /** Relative resolution. */
  a: finite.nullable(),
  class: accuracyClass,
})
export type CalibrationStep = z.infer<typeof calibrationStep>

/** What `calibrate --json` prints: force in N = b0 + b1 reading + b2 reading^2 + ... */
export const calibrationResult = z.strictObject({
  degree: z.int().min(1).max(3),
  /** Index is the power of the reading. A line through zero has b0 = 0, with standard error 0: it is set, not found. */
  coefficients: z.array(finite).min(2),
  coefficientSE: z.array(finite.nullable()).min(2),
  residualSD: finite.nullable(),
  rSquared: finite,
  readings: z.int().positive(),
  /** null where the resolution leaves no verified range. */
  verifiedRangeN: z.tuple([finite, finite]).nullable(),
  steps: z.array(calibrationStep),
  class: accuracyClass,
  /** Largest expanded uncertainty (k = 2) in the verified range, percent of the force. */
  expandedUncertaintyPercent: finite.nullable(),
})

export const oimlClass = z.enum(['F1', 'F2', 'M1', 'M2', 'M3'])
export type OimlClass = z.infer<typeof oimlClass>

export const weightMaterial = z.enum(['cast iron', 'steel', 'stainless steel', 'brass', 'nickel silver'])
export type WeightMaterial = z.infer<typeof weightMaterial>

/** One weight of the kept set. */
export const weight = z.strictObject({
  name: z.string().trim().min(1).max(200),
  nominalKg: positive,
  /** From its certificate or a scale; null: the nominal value is used. */
  conventionalMassKg: positive.nullable(),
  tolerance: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('oiml'), class: oimlClass }),
    /** Half-width of what is believed, kg. */
    z.strictObject({ kind: z.literal('own'), halfWidthKg: finite.nonnegative() }),
  ]),
  density: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('material'), material: weightMaterial }),
    z.strictObject({ kind: z.literal('typed'), kgPerM3: positive }),
  ]),
})
export type Weight = z.infer<typeof weight>

/** Where the local gravity comes from. */
export const gravityChoice = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('latitude'),
    latitudeDeg: finite,
    heightM: finite,
    ellipsoid: z.enum(['WGS 84', 'GRS 80']).default('WGS 84'),
  }),
  z.strictObject({
    kind: z.literal('typed'),
    gMPerS2: finite,
    /** Half-width of what is believed, m/s2. */
    halfWidthMPerS2: finite.nonnegative(),
  }),
])
export type GravityChoice = z.infer<typeof gravityChoice>

/** What made the forces, beside the weights. */
export const loadingCircumstances = z.strictObject({
  gravity: gravityChoice,
  gMPerS2: positive,
  airDensityKgPerM3: positive,
  /** Force on the cell over weight force; 1: the weights hang on the cell itself. */
  leverRatio: positive,
  /** Half-width of what is believed of the lever ratio, percent of it. */
  leverHalfWidthPercent: finite.nonnegative(),
  capacityN: positive.nullable(),
  preloads: z.int().nonnegative(),
  /** Resolution of the reading, in its own unit; null: not known. */
  resolution: positive.nullable(),
  temperatureStartC: finite.nullable(),
  temperatureEndC: finite.nullable(),
  temperatureNote: z.string().max(4000),
})

/**
 * One averaged window of the live signal, as taken. used: enters the fit. replaced: repeated by the reading named.
 * broken-off: belongs to a run that was not finished. None is ever removed.
 */
export const calibrationReading = z.strictObject({
  run: z.int().positive(),
  direction: loadDirection,
  weights: z.array(z.string()),
  forceN: finite,
  mean: finite,
  sd: finite.nonnegative(),
  count: z.int().positive(),
  takenAt: isoInstant,
  standing: z.enum(['used', 'replaced', 'broken-off']),
  /** Index in the list of readings; null unless replaced. */
  replacedBy: z.int().nonnegative().nullable(),
})
export type CalibrationReading = z.infer<typeof calibrationReading>
/** A reading when it is taken: whether it will count is not yet known. */
export type TakenReading = Omit<CalibrationReading, 'standing' | 'replacedBy'>

export const uncertaintySource = z.enum([
  'weights',
  'buoyancy',
  'lever',
  'gravity',
  'fit',
  'lack-of-fit',
  'repeatability',
  'resolution',
  'zero',
  'reversibility',
  'creep',
])
export type UncertaintySource = z.infer<typeof uncertaintySource>

/** One line of an uncertainty budget. Degrees of freedom null: infinitely many. */
export const uncertaintyContribution = z.strictObject({
  source: uncertaintySource,
  standardUncertaintyN: finite.nonnegative(),
  distribution: z.enum(['normal', 'rectangular']),
  degreesOfFreedom: positive.nullable(),
})
export type UncertaintyContribution = z.infer<typeof uncertaintyContribution>

/** The budget at one force. expandedN is k = 2; expanded95N takes k from Student's t and the effective degrees of freedom. */
export const uncertaintyAtForce = z.strictObject({
  forceN: positive,
  contributions: z.array(uncertaintyContribution),
  combinedN: finite.nonnegative(),
  effectiveDegreesOfFreedom: positive.nullable(),
  expandedN: finite.nonnegative(),
  expandedPercent: finite.nonnegative(),
  coverageFactor95: positive,
  expanded95N: finite.nonnegative(),
})
export type UncertaintyAtForce = z.infer<typeof uncertaintyAtForce>

/** Everything needed to state the uncertainty at any force of the range again. Relative half-widths are shares of the force. */
export const uncertaintyModel = z.strictObject({
  /** The fit about its centre: force = sum of c_k ((reading - centre) / scale)^power_k, covariance of the c_k. */
  centred: z.strictObject({
    centre: finite,
    scale: positive,
    powers: z.array(z.int().nonnegative()),
    coefficients: z.array(finite),
    covariance: z.array(z.array(finite)),
    degreesOfFreedom: z.int().positive(),
  }),
  readingRange: z.tuple([finite, finite]),
  forceRangeN: z.tuple([finite, finite]),
  repeatabilityN: finite.nonnegative(),
  repeatabilityDegreesOfFreedom: z.int().positive(),
  lackOfFitHalfWidthN: finite.nonnegative().nullable(),
  weightsShare: finite.nonnegative().nullable(),
  buoyancyShare: finite.nonnegative().nullable(),
  leverShare: finite.nonnegative().nullable(),
  gravityShare: finite.nonnegative().nullable(),
  resolution: finite.nonnegative().nullable(),
  zeroHalfWidthN: finite.nonnegative().nullable(),
  reversibilityShare: finite.nonnegative().nullable(),
  creepShare: finite.nonnegative().nullable(),
})
export type UncertaintyModel = z.infer<typeof uncertaintyModel>

export const uncertaintyBudget = z.strictObject({
  model: uncertaintyModel,
  steps: z.array(uncertaintyAtForce),
  worstPercent: finite.nonnegative(),
  worstAtN: positive,
})
export type UncertaintyBudget = z.infer<typeof uncertaintyBudget>

export const lackOfFitTest = z.strictObject({
  f: finite.nonnegative(),
  lackDegreesOfFreedom: z.int().positive(),
  pureDegreesOfFreedom: z.int().positive(),
  pureErrorSD: finite.nonnegative(),
  pValue: finite.min(0).max(1),
})
export type LackOfFitTest = z.infer<typeof lackOfFitTest>

/** Which degree the program proposes, in a sentence, with the test of every degree that was tried. */
export const degreeProposal = z.strictObject({
  degree: z.int().min(1).max(3),
  reason: z.string(),
  tried: z.array(z.strictObject({ degree: z.int().min(1).max(3), lackOfFit: lackOfFitTest.nullable() })),
})
export type DegreeProposal = z.infer<typeof degreeProposal>

/** The range over which every step reaches a class. */
export const classRange = z.strictObject({
  class: accuracyClass.exclude(['none']),
  fromN: positive,
  toN: positive,
})
export type ClassRange = z.infer<typeof classRange>

/** How an empty cell, or one under a load that stays, goes on moving; percent of the load. Readings in the unit of the device. */
export const creepResult = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('creep'),
    run: z.int().positive(),
    loadN: positive,
    fromReading: finite,
    toReading: finite,
    percent: finite,
    /** Counted from the moment at which the person said that the load hangs, s. */
    fromS: positive,
    toS: positive,
  }),
  z.strictObject({
    kind: z.literal('zero-return'),
    run: z.int().positive(),
    /** The highest force of the run. */
    loadN: positive,
    /** The zero before the run, and the one after it. */
    fromReading: finite,
    toReading: finite,
    percent: finite,
  }),
])
export type CreepResult = z.infer<typeof creepResult>

/** All that a fit says, derived again at any time from the readings in use. */
export const calibrationAssessment = z.strictObject({
  method: z.string(),
  result: calibrationResult,
  fitOver: z.enum(['all', 'up']),
  throughZero: z.boolean(),
  proposal: degreeProposal,
  lackOfFit: lackOfFitTest.nullable(),
  /** Force found minus force applied, N, beside each row in order. */
  residualsN: z.array(finite),
  /** Force of each row by the fit, N. */
  indicatedN: z.array(finite),
  budget: uncertaintyBudget.nullable(),
  classRanges: z.array(classRange),
  /** What limits the word of this calibration, each a sentence. */
  notes: z.array(z.string()),
})
export type CalibrationAssessment = z.infer<typeof calibrationAssessment>

/** A calibration as stored: with every raw reading; never changed, only superseded. */
export const calibration = z.strictObject({
  calibrationId: id,
  name: z.string().trim().min(1).max(200),
  madeAt: isoInstant,
  by: z.string(),
  supersedes: id.nullable(),
  dueOn: isoDate.nullable(),
  /** Where the readings came from: a device in words, or a file. */
  source: z.string(),
  /** For which kind of device it holds: the virtual amplifier's cell is not the one on the bench. */
  device: z.enum(['serial', 'virtual']),
  readingUnit,
  /** null where only forces were known, as from a calibration file. */
  circumstances: loadingCircumstances.nullable(),
  weights: z.array(weight),
  readings: z.array(calibrationReading),
  /** The rows that were fitted; from a file these are its lines. */
  rows: z.array(calibrationRow),
  creep: z.array(creepResult),
  assessment: calibrationAssessment,
  note: z.string().max(4000),
})
export type Calibration = z.infer<typeof calibration>

/** A reading of the check weight against what it should be. */
export const checkWeightReading = z.strictObject({
  checkId: id,
  calibrationId: id,
  takenAt: isoInstant,
  by: z.string(),
  weight: z.string(),
  expectedN: positive,
  indicatedN: finite,
  sdN: finite.nonnegative(),
  count: z.int().positive(),
})
export type CheckWeightReading = z.infer<typeof checkWeightReading>
