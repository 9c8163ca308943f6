import * as z from 'zod'
import { finite } from '../values.ts'

const known = finite.nullable()
const age = finite.nullable()
const cell = { group: z.string(), ageMonths: age }
const interval = { lowMPa: known, highMPa: known }
const numbers = z.record(z.string(), finite)

const groupSummaryLine = z.strictObject({
  kind: z.literal('group-summary'),
  ...cell,
  treatment: z.string(),
  n: z.int(),
  excluded: z.int(),
  censored: z.int(),
  meanMPa: known,
  sdMPa: known,
  cvPercent: known,
  meanLowMPa: known,
  meanHighMPa: known,
  medianMPa: known,
  q1MPa: known,
  q3MPa: known,
  minMPa: known,
  maxMPa: known,
  lowerToleranceMPa: known,
  lowerToleranceNonparametricMPa: known,
  woodFailureMeanPercent: known,
  allWoodSharePercent: known,
})

const censoredFitLine = z.strictObject({
  kind: z.literal('censored-fit'),
  ...cell,
  distribution: z.enum(['weibull', 'lognormal', 'normal']),
  failures: z.int(),
  censored: z.int(),
  logLikelihood: known,
  aic: known,
  aicc: known,
  parameters: numbers.nullable(),
  standardErrors: numbers.nullable(),
  meanMPa: known,
  meanLowMPa: known,
  meanHighMPa: known,
  medianMPa: known,
  b10MPa: known,
  b10LowMPa: known,
  b10HighMPa: known,
  intervalMethod: z.string(),
})

const survivalLine = z.strictObject({
  kind: z.literal('survival'),
  ...cell,
  strengthMPa: z.array(finite),
  survival: z.array(finite),
  standardError: z.array(known),
  atRisk: z.array(z.int()),
})

const test = { statistic: known, df1: known, df2: known, p: known }
const spreadTestLine = z.strictObject({
  kind: z.literal('spread-test'),
  ageMonths: age,
  method: z.enum(['brown-forsythe', 'levene', 'bartlett']),
  ...test,
})
const meansTestLine = z.strictObject({
  kind: z.literal('means-test'),
  ageMonths: age,
  method: z.enum(['one-way', 'welch', 'kruskal-wallis']),
  ...test,
})

const pairMethod = z.enum(['tukey-kramer', 'games-howell', 'dunn-holm'])
const pairLine = z.strictObject({
  kind: z.literal('pair'),
  ageMonths: age,
  method: pairMethod,
  a: z.string(),
  b: z.string(),
  differenceMPa: known,
  ...interval,
  statistic: known,
  df: known,
  p: known,
})
const againstReferenceLine = z.strictObject({
  kind: z.literal('against-reference'),
  ...cell,
  reference: z.string(),
  differenceMPa: known,
  ...interval,
  statistic: known,
  p: known,
})
const lettersLine = z.strictObject({
  kind: z.literal('letters'),
  ageMonths: age,
  method: pairMethod,
  letters: z.record(z.string(), z.string()),
})
const equivalenceLine = z.strictObject({
  kind: z.literal('equivalence'),
  ageMonths: age,
  a: z.string(),
  b: z.string(),
  marginPercent: finite,
  pLower: known,
  pUpper: known,
  p: known,
  equivalent: z.boolean().nullable(),
})
const rankLine = z.strictObject({
  kind: z.literal('rank'),
  ...cell,
  rank: z.int().nullable(),
  rankLow: z.int().nullable(),
  rankHigh: z.int().nullable(),
  firstShare: known,
})
const shrunkenMeanLine = z.strictObject({
  kind: z.literal('shrunken-mean'),
  ...cell,
  meanMPa: known,
  ...interval,
  shrinkagePercent: known,
  betweenSDMPa: known,
})
const outlierLine = z.strictObject({
  kind: z.literal('outlier'),
  ...cell,
  method: z.enum(['grubbs', 'generalized-esd']),
  specimen: z.string().nullable(),
  strengthMPa: finite,
  statistic: finite,
  critical: finite,
  p: known,
})
const trendLine = z.strictObject({
  kind: z.literal('trend'),
  ...cell,
  test: z.enum(['mann-kendall', 'jonckheere']),
  statistic: finite,
  z: known,
  p: known,
  slopeMPaPerYear: known,
})
const retentionLine = z.strictObject({
  kind: z.literal('retention'),
  ...cell,
  referenceAgeMonths: finite,
  ratio: known,
  low: known,
  high: known,
  bounded: z.boolean().nullable(),
})

/** Why a model of ageing was not fitted. */
export const ageingFailure = z.enum(['few-ages', 'few-blocks', 'no-spread', 'no-curvature', 'no-maximum'])
const ageingModelLine = z.strictObject({
  kind: z.literal('ageing-model'),
  ...cell,
  model: z.enum(['constant', 'linear', 'log-time', 'square-root-time', 'exponential-approach']),
  parameters: numbers.nullable(),
  standardErrors: numbers.nullable(),
  sigmaMPa: known,
  aicc: known,
  weight: known,
  failed: ageingFailure.nullable(),
})
const forecastLine = z.strictObject({
  kind: z.literal('forecast'),
  ...cell,
  meanMPa: known,
  ...interval,
  retentionPercent: known,
  belowShareProbability: known,
})
const detectableLine = z.strictObject({
  kind: z.literal('detectable'),
  ...cell,
  changePercent: known,
  power: finite,
})

/** What a note says, as a code: the words stand in words/findings. */
export const noteCode = z.enum([
  'no-blocks',
  'one-block',
  'one-group',
  'no-spread',
  'one-strength',
  'no-failure',
  'no-fit',
  'no-reference',
  'no-margin',
  'no-reference-named',
  'few-groups',
  'few-ages',
  'retention-unbounded',
  'one-block-left-out',
  'no-spread-no-test',
  'open-interval',
  'later-start',
  'no-change-to-find',
  'all-simulated',
  'some-simulated',
])
export type NoteCode = z.infer<typeof noteCode>
const noteLine = z.strictObject({
  kind: z.literal('note'),
  about: z.string(),
  code: noteCode,
  group: z.string().nullable(),
  ageMonths: age,
})

/** One line of findings. */
export const findingLine = z.discriminatedUnion('kind', [
  groupSummaryLine,
  censoredFitLine,
  survivalLine,
  spreadTestLine,
  meansTestLine,
  pairLine,
  againstReferenceLine,
  lettersLine,
  equivalenceLine,
  rankLine,
  shrunkenMeanLine,
  outlierLine,
  trendLine,
  retentionLine,
  ageingModelLine,
  forecastLine,
  detectableLine,
  noteLine,
])
export type FindingLine = z.infer<typeof findingLine>
export type FindingOf<K extends FindingLine['kind']> = Extract<FindingLine, { kind: K }>

export const findingKind = z.enum([
  'group-summary',
  'censored-fit',
  'survival',
  'spread-test',
  'means-test',
  'pair',
  'against-reference',
  'letters',
  'equivalence',
  'rank',
  'shrunken-mean',
  'outlier',
  'trend',
  'retention',
  'ageing-model',
  'forecast',
  'detectable',
  'note',
])
export type FindingKind = z.infer<typeof findingKind>
