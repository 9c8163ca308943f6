import type { BreakSummary } from '#contract/breaks/break.ts'
import type { Flag } from '#contract/breaks/evaluation.ts'
import { highestWeightWords } from '../calibration/verificationWords.ts'
import { isSimulated, simulatedMark } from '../keeping/demoWords.ts'
import { resultsWords } from '../specimens/resultsWords.ts'

/** What a flag means for whoever reads the number, and what to do. */
export const flagWords: Record<Flag, string> = {
  uncalibrated: 'Uncalibrated: the force comes from a typed scale or from the unit that the amplifier sends.',
  'no-scale': 'No scale: the readings are counts, so there is no force and no strength.',
  clipped: 'The converter reached the end of its range. The true peak is at least this high.',
  'over-capacity':
    'The load went above the rated load: what was read there is a lower limit. Check the cell before going on.',
  gap: 'Samples are missing from the curve.',
  'gap-at-peak': 'Samples are missing at the peak. The true peak may be higher.',
  glitch: 'A lone electrical spike was left out: it was not a load.',
  'sampling-too-slow': 'Sampled too slowly for this loading rate. Use a faster conversion rate or load more slowly.',
  'no-pre-trigger': 'Recording began under load, so the start of the curve is missing.',
  interrupted: 'The amplifier was disconnected during the recording. What had arrived is kept.',
  recovered: 'The program ended during the recording. What was on disk is kept.',
  'above-verified-range': 'The peak lies above the range that the calibration was verified for.',
  'below-verified-range': 'The peak lies below the range that the calibration was verified for.',
  'peak-picked': 'The peak was picked by hand, with a reason, in place of the one found.',
  'premature-failure': 'An early drop was declared the failure; the curve went higher afterwards.',
}

/** The shortest name of a flag, for a list. */
export const flagNames: Record<Flag, string> = {
  uncalibrated: 'uncalibrated',
  'no-scale': 'no scale',
  clipped: 'clipped',
  'over-capacity': 'above rated load',
  gap: 'gap',
  'gap-at-peak': 'gap at peak',
  glitch: 'spike left out',
  'sampling-too-slow': 'sampled too slowly',
  'no-pre-trigger': 'start missing',
  interrupted: 'interrupted',
  recovered: 'recovered',
  'above-verified-range': 'above verified range',
  'below-verified-range': 'below verified range',
  'peak-picked': 'peak picked by hand',
  'premature-failure': 'premature failure',
}

/** Flags that the words on the verified range say better, with figures. */
export const verifiedRangeFlags: readonly Flag[] = ['above-verified-range', 'below-verified-range']

/** Flags that say whose word the peak is. */
const overrulingFlags: readonly Flag[] = ['peak-picked', 'premature-failure']

/** What remarks are made from: flags, by how many times the peak lies above the verified range, and where it came from; as far as known. */
type Remarked = {
  flags: readonly Flag[]
  verification: { timesVerified: number | null } | null
} & Partial<Pick<BreakSummary, 'resultsOfSpecimen' | 'demo' | 'simulated'>>

/**
 * What a list says of a break's flags: first whether it is simulated or not the only result of its specimen, then a person's
 * word, and how far above the verified range it lies; of samples that are missing at the peak once only. No more than `most`
 * by name, the rest by their number.
 */
export function flagListWords(remarked: Remarked, most = Number.POSITIVE_INFINITY): string {
  const { flags, verification } = remarked
  const timesVerified = verification?.timesVerified ?? null
  const names = flags
    .filter((flag) => flag !== 'gap' || !flags.includes('gap-at-peak'))
    .toSorted((a, b) => Number(overrulingFlags.includes(b)) - Number(overrulingFlags.includes(a)))
    .map((flag) =>
      flag === 'above-verified-range' && timesVerified !== null && timesVerified > 1
        ? highestWeightWords(timesVerified)
        : flagNames[flag],
    )
  const results = resultsWords(remarked.resultsOfSpecimen ?? 0)
  if (results !== null) names.unshift(results)
  if (isSimulated(remarked)) names.unshift(simulatedMark)
  return names.length <= most ? names.join(', ') : `${names.slice(0, most).join(', ')}, +${names.length - most}`
}
