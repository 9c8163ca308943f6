import type { FindingLine } from '#contract/findings/lines.ts'
import type { FindingsOptions } from '#contract/findings/options.ts'
import { countOf } from '../units/counts.ts'
import { writeSignificant } from '../units/numbers.ts'
import { toldApart } from './answerWords.ts'
import { noteText } from './noteWords.ts'
import { treatmentWords } from './treatmentWords.ts'

/** Zero has no figures to show. */
const significant = (value: number, figures: number) => (value === 0 ? '0' : writeSignificant(value, figures))
const figure = (value: number | null) => (value === null ? '-' : significant(value, 4))
const mpa = (value: number | null) => (value === null ? '-' : `${figure(value)} MPa`)
const between = (low: number | null, high: number | null) =>
  low === null && high === null ? 'no interval' : `${figure(low)} to ${figure(high)}`
/** Shares need no more than two figures. */
const percent = (value: number | null) => (value === null ? '-' : `${significant(value, 2)} %`)
/** A line may lead below nothing; a strength cannot. */
const held = (value: number | null) => (value === null ? null : Math.max(value, 0))
const chance = (p: number | null) => (p === null ? '-' : p < 0.0001 ? 'below 0.0001' : p.toFixed(4))

/** Tests by the names under which textbooks have them. */
const testNames = {
  'brown-forsythe': 'Brown-Forsythe',
  levene: 'Levene',
  bartlett: 'Bartlett',
  'one-way': 'one-way analysis of variance',
  welch: 'Welch',
  'kruskal-wallis': 'Kruskal-Wallis',
} as const

/** Group and age as a line begins with them. */
function of(group: string | null, ageMonths: number | null): string {
  return [group, ageMonths === null ? null : `${ageMonths} months`].filter((words) => words !== null).join(', ')
}

/** Whether a difference is one: no "stronger" where the interval holds 0. */
function difference(
  a: string,
  b: string,
  line: { differenceMPa: number | null; lowMPa: number | null; highMPa: number | null },
): string {
  const { differenceMPa, lowMPa, highMPa } = line
  if (differenceMPa === null) return `${a} and ${b}`
  // By how much one is weaker has no sign, nor have the ends of its interval.
  if (lowMPa !== null && highMPa !== null && (lowMPa > 0 || highMPa < 0)) {
    const ends = [Math.abs(lowMPa), Math.abs(highMPa)].sort((one, other) => one - other)
    const size = `${mpa(Math.abs(differenceMPa))} (${between(ends[0]!, ends[1]!)})`
    return toldApart(a, b, differenceMPa, size)
  }
  const interval = lowMPa === null ? '' : ` (${between(lowMPa, highMPa)})`
  return `${a} and ${b} cannot be told apart: ${figure(differenceMPa)} MPa${interval}`
}

/** Degrees of freedom as they stand beside a statistic; none where there is no test. */
function degrees({ df1, df2 }: { df1: number | null; df2: number | null }): string {
  return df1 === null
    ? ''
    : ` on ${[df1, ...(df2 === null ? [] : [df2])].map((df) => (Number.isInteger(df) ? df : figure(df))).join(' and ')} ${df1 === 1 && df2 === null ? 'degree' : 'degrees'} of freedom`
}

/** What all lines rest on, as it stands before them. */
export function basisText(options: FindingsOptions): string {
  const { confidence, toleranceContent, toleranceConfidence, seed } = options
  const share = (part: number) => percent(100 * part)
  return (
    `Intervals hold with ${share(confidence)} confidence. Torn wood: ${treatmentWords(options)}. Lower tolerance limit: ` +
    `${share(toleranceContent)} of blocks are stronger, with ${share(toleranceConfidence)} confidence. Resamplings from seed ${seed}.`
  )
}

/** One line of findings in words for people. */
export function findingText(line: FindingLine): string {
  switch (line.kind) {
    case 'group-summary':
      return (
        `${of(line.group, line.ageMonths)}: n ${line.n}, mean ${mpa(line.meanMPa)} (${between(line.meanLowMPa, line.meanHighMPa)}), ` +
        `SD ${figure(line.sdMPa)}, median ${figure(line.medianMPa)}, ${figure(line.minMPa)} to ${figure(line.maxMPa)}, ` +
        `lower tolerance limit ${mpa(held(line.lowerToleranceMPa))}, ` +
        (line.woodFailureMeanPercent === null
          ? 'torn wood not assessed'
          : `torn wood ${percent(line.woodFailureMeanPercent)}`) +
        (line.excluded === 0 ? '' : `, ${line.excluded} left out`)
      )
    case 'censored-fit':
      return (
        `${of(line.group, line.ageMonths)}: ${line.distribution}, ${countOf(line.failures, 'bond')} failed and ${line.censored} outlasted the wood: ` +
        `mean ${mpa(line.meanMPa)} (${between(line.meanLowMPa, line.meanHighMPa)}), one in ten below ${mpa(line.b10MPa)} ` +
        `(${between(line.b10LowMPa, line.b10HighMPa)})`
      )
    case 'survival':
      return `${of(line.group, line.ageMonths)}: share that holds more than ${line.strengthMPa.map((value, i) => `${figure(value)}: ${figure(line.survival[i]!)}`).join(', ')}`
    case 'spread-test':
    case 'means-test':
      return `${of(line.kind === 'spread-test' ? 'equal spread' : 'equal means', line.ageMonths)}, ${testNames[line.method]}: ${figure(line.statistic)}${degrees(line)}, p ${chance(line.p)}`
    case 'pair':
      return `${of(line.method, line.ageMonths)}: ${difference(line.a, line.b, line)}, p ${chance(line.p)}`
    case 'against-reference':
      return `${of('against the reference', line.ageMonths)}: ${difference(line.group, line.reference, line)}, p ${chance(line.p)}`
    case 'letters':
      return `${of(`letters by ${line.method}`, line.ageMonths)}: ${Object.entries(line.letters)
        .map(([group, letters]) => `${group} ${letters}`)
        .join(', ')}`
    case 'equivalence':
      return `${of('equivalence', line.ageMonths)}: ${line.a} and ${line.b} ${line.equivalent === true ? 'are' : 'are not shown to be'} within ${figure(line.marginPercent)} %, p ${chance(line.p)}`
    case 'rank':
      return `${of(line.group, line.ageMonths)}: rank ${line.rank ?? '-'}, between ${line.rankLow ?? '-'} and ${line.rankHigh ?? '-'}, first in ${percent(line.firstShare === null ? null : 100 * line.firstShare)} of resamplings`
    case 'shrunken-mean':
      return `${of(line.group, line.ageMonths)}: drawn towards the others ${mpa(line.meanMPa)} (${between(line.lowMPa, line.highMPa)}), by ${percent(line.shrinkagePercent)}`
    case 'outlier':
      return `${of(line.group, line.ageMonths)}: ${line.specimen ?? 'a block'} at ${mpa(line.strengthMPa)} lies far out (${line.method}, ${figure(line.statistic)} over ${figure(line.critical)}); nothing was removed`
    case 'trend':
      return `${line.group}: ${line.test}, ${figure(line.statistic)}, p ${chance(line.p)}${line.slopeMPaPerYear === null ? '' : `, ${figure(line.slopeMPaPerYear)} MPa a year`}`
    case 'retention':
      return `${of(line.group, line.ageMonths)}: ${figure(line.ratio)} of the strength at ${line.referenceAgeMonths} months (${between(line.low, line.high)})`
    case 'ageing-model':
      return line.failed === null
        ? `${line.group}: ${line.model}, ${Object.entries(line.parameters ?? {})
            .map(([name, value]) => `${name} ${figure(value)}`)
            .join(', ')}, weight ${line.weight !== null && line.weight < 0.001 ? 'below 0.001' : figure(line.weight)}`
        : `${line.group}: ${line.model} cannot be fitted: ${failureWords[line.failed]}`
    case 'forecast':
      return `${of(line.group, line.ageMonths)}: forecast ${mpa(held(line.meanMPa))} (${between(held(line.lowMPa), held(line.highMPa))}), ${percent(held(line.retentionPercent))} of the start`
    case 'detectable':
      return `${of(line.group, line.ageMonths)}: a change of ${percent(line.changePercent)} since the first age would be found in ${percent(100 * line.power)} of such series`
    case 'note':
      return `note on ${line.about}: ${noteText(line)}`
  }
}

/** Why a model of ageing was not fitted, in words. */
export const failureWords = {
  'few-ages': 'there are too few ages',
  'few-blocks': 'there are too few blocks',
  'no-spread': 'the blocks lie on it exactly, so that nothing says how sure it is',
  'no-curvature': 'the data show no bend, so that its time constant is not known',
  'no-maximum': 'too many blocks held more than they showed',
} as const
