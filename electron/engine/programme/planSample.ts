import { Trouble } from '#contract/errors.ts'
import type { SampleSizePlan, SampleSizeQuestion } from '#contract/programme/sampleSize.ts'
import { blocksForPower, detectableDifference, mostBlocks, powerToFind } from '#domain/programme/sampleSize.ts'

/**
 * Finds the one of blocks a group, difference and power that a question leaves open.
 * Throws a Trouble where not exactly one is open, or where there is no answer.
 */
export function planSample(question: SampleSizeQuestion): SampleSizePlan {
  const { n, differencePercent, power, cvPercent, confidence, comparison, groups } = question
  const given = { comparison, groups, cvPercent, confidence }
  const inSds = (percent: number) => percent / cvPercent
  if (n !== null && differencePercent !== null && power === null)
    return { ...given, n, differencePercent, power: powerToFind(question, n, inSds(differencePercent)) }
  if (power !== null && power <= 1 - confidence)
    throw new Trouble(
      'invalid-input',
      `A power of ${power} is no more than the chance of a false alarm, ${Number((1 - confidence).toPrecision(6))}.`,
      'Ask for a larger power; 0.8 or 0.9 is usual.',
    )
  if (power !== null && differencePercent !== null && n === null) {
    const found = blocksForPower(question, inSds(differencePercent), power)
    if (found === null)
      throw new Trouble(
        'unsupported',
        `A difference of ${differencePercent} % would need more than ${mostBlocks} blocks a group.`,
        'Look for a larger difference, or find out why the blocks of a group differ so much.',
      )
    return { ...given, n: found, differencePercent, power }
  }
  if (power !== null && n !== null && differencePercent === null) {
    const found = detectableDifference(question, n, power)
    if (found === null)
      throw new Trouble(
        'unsupported',
        `With ${n} blocks a group no difference is found with that power.`,
        'Make more blocks.',
      )
    return { ...given, n, differencePercent: found * cvPercent, power }
  }
  throw new Trouble(
    'invalid-input',
    'Two of blocks a group, difference and power must be given; the third is found.',
    'Leave one of the three out.',
  )
}
