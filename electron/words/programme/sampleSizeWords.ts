import type { SampleSizePlan } from '#contract/programme/sampleSize.ts'
import { percentWords, writeFixed, writeSignificant } from '../units/numbers.ts'

/** What a plan says, in sentences for people: what n blocks a group can show, and what that rests on. */
export function sampleSizeSentences(plan: SampleSizePlan): string[] {
  const { comparison, groups, n, cvPercent, differencePercent, power, confidence } = plan
  const blocks = Math.ceil(n - 1e-9)
  const exact = Number.isInteger(n)
    ? ''
    : ` (${n < 1000 ? writeSignificant(n, 4) : writeFixed(n, 1)} before rounding up)`
  const compared =
    comparison === 'pair' ? 'between two groups' : `between the strongest and the weakest of ${groups} groups`
  return [
    `With ${blocks} blocks a group${exact}, a true difference of ${percentWords(differencePercent)} ${compared} is found ` +
      `in ${percentWords(power * 100)} of such studies.`,
    `That takes blocks of one group to vary by ${percentWords(cvPercent)} (coefficient of variation) and a difference to ` +
      `count at ${percentWords(confidence * 100)} confidence.`,
    comparison === 'pair'
      ? 'One comparison of two groups is meant: where many pairs are compared, each needs more blocks.'
      : 'One test of all groups is meant, all others midway: it says that some differ, not which.',
  ]
}
