import type { BenchState } from '#contract/bench/bench.ts'
import type {
  BreakSummary,
  Decision,
  Ending,
  FailurePattern,
  OverruledPeak,
  SetAsideCause,
} from '#contract/breaks/break.ts'
import type { CurveEvent, Flag } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/force.ts'
import type { LineFormatChoice } from '#contract/settings/settings.ts'

/** What a flag means for whoever reads the number, and what to do. */
export const flagWords: Record<Flag, string> = {
  uncalibrated: 'Uncalibrated: the force comes from a typed scale or from the device’s own claim.',
  'no-scale': 'No scale: the readings are counts, so there is no force and no strength.',
  clipped: 'The converter was at its end. The true peak is at least this high.',
  'over-capacity':
    'The load went above the rated load: what was read there is a lower limit. Check the cell before going on.',
  gap: 'Samples are missing from the curve.',
  'gap-at-peak': 'Samples are missing at the peak. The true peak may be higher.',
  glitch: 'A lone electrical spike was left out. It was no load.',
  'sampling-too-slow': 'Sampled too slowly for this loading rate. Use a faster conversion rate or load more slowly.',
  'no-pre-trigger': 'The capture began under load, so the start of the curve is missing.',
  interrupted: 'The device went away during the capture. What had arrived is kept.',
  recovered: 'The program ended during the capture. What was on disk is kept.',
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
  'over-capacity': 'over capacity',
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

/**
 * What a list says of a break's flags: a person's word first, and how far above the verified range it lies, if it does; of
 * samples that are missing at the peak once only. No more than `most` of them by name, the rest by their number.
 */
export function flagListWords(
  { flags, verification }: Pick<BreakSummary, 'flags' | 'verification'>,
  most = Number.POSITIVE_INFINITY,
): string {
  const times = verification?.timesVerified ?? null
  const names = flags
    .filter((flag) => flag !== 'gap' || !flags.includes('gap-at-peak'))
    .toSorted((a, b) => Number(overrulingFlags.includes(b)) - Number(overrulingFlags.includes(a)))
    .map((flag) =>
      flag === 'above-verified-range' && times !== null && times > 1
        ? `${times.toPrecision(2)} × highest weight`
        : flagNames[flag],
    )
  return names.length <= most ? names.join(', ') : `${names.slice(0, most).join(', ')}, +${names.length - most}`
}

/** What an event of a curve is called. */
export const eventNames: Record<CurveEvent['kind'], string> = {
  'pop-in': 'Pop-in',
  'stick-slip': 'Stick-slip',
  glitch: 'Electrical spike',
  gap: 'Missing samples',
  clipping: 'Clipping',
  seating: 'Seating',
  plateau: 'Plateau',
  hold: 'Hold',
  reload: 'Loaded again',
  'final-drop': 'Final drop',
}

export const patternNames: Record<FailurePattern, string> = {
  SF: 'substrate failure',
  CSF: 'cohesive failure of the substrate',
  DF: 'delamination',
  CF: 'cohesion failure, in the adhesive',
  SCF: 'special cohesion failure, near one face',
  AF: 'adhesion failure',
  ACFP: 'adhesion and cohesion failure with peel',
}

/** Shown in the order from the wood to the bond. */
export const patternOrder: readonly FailurePattern[] = ['SF', 'CSF', 'DF', 'CF', 'SCF', 'AF', 'ACFP']

export const endingWords: Record<Ending, string> = {
  complete: 'ended by the break detector',
  interrupted: 'cut short: the device went away',
  recovered: 'recovered after the program had ended',
}

export const decisionWords: Record<Decision['kind'], string> = {
  'set-aside': 'Set aside',
  'taken-back': 'Taken back in',
  reassigned: 'Moved to another specimen',
  'peak-picked': 'Peak picked by hand',
  'premature-failure': 'Declared a premature failure',
  'peak-as-found': 'Peak again as found',
}

export const setAsideCauseWords: Record<SetAsideCause, string> = {
  'specimen-slipped': 'specimen slipped',
  'wrong-block': 'wrong block',
  'fixture-touched': 'fixture touched',
  other: 'other',
}

/** Why a break is set aside: what happened, where that was asked, and the reason. */
export function setAsideWords({ setAside, setAsideCause }: Pick<BreakSummary, 'setAside' | 'setAsideCause'>): string {
  const cause = setAsideCause === null || setAsideCause === 'other' ? '' : `${setAsideCauseWords[setAsideCause]}; `
  return `${cause}${setAside ?? ''}`
}

/** What a person wrote, closed with a full stop where another sentence follows. */
export function endedSentence(written: string): string {
  return /[.!?…]$/.test(written.trim()) ? written.trim() : `${written.trim()}.`
}

/** Whose word stands in place of the peak found, in a sentence for a list. */
export function overruledWords({ kind, by, reason }: OverruledPeak): string {
  return `${flagNames[kind]} by ${by}: ${reason}`
}

/** True unless the force rests on a calibration. */
export function isUncalibrated(kind: ForceScale['kind']): boolean {
  return kind !== 'calibration'
}

/** What the force rests on, in words; `name` is the name of its calibration where that is known. */
export function scaleWords(scale: ForceScale, name: string | null = null): string {
  switch (scale.kind) {
    case 'none':
      return 'no scale: readings are counts'
    case 'uncalibrated-scale':
      return `uncalibrated: typed scale, ${Number(scale.nPerCount.toPrecision(6))} N per count`
    case 'device-unit':
      return `uncalibrated: the device says its readings are ${scale.unit}`
    case 'calibration':
      return name === null ? `calibration ${scale.calibrationId}` : `calibration “${name}”`
  }
}

/** The outcome of a break as a short word for lists. */
export function outcomeWord(summary: Pick<BreakSummary, 'outcome' | 'ending' | 'setAside'>): string {
  if (summary.setAside !== null) return 'set aside'
  if (summary.ending === null) return 'running'
  if (summary.outcome === 'break') return 'broke'
  // Nobody saw the load go down where the capture ended before it did
  if (summary.outcome === 'unloading') return summary.ending === 'complete' ? 'unloaded' : 'cut short'
  return summary.outcome === 'none' ? 'not loaded' : 'not evaluated'
}

/** How the device is connected, in words. */
export function connectionWords(connection: BenchState['connection']): string {
  switch (connection.status) {
    case 'closed':
      return 'Not connected'
    case 'opening':
      return 'Connecting'
    case 'open':
      return 'Connected'
    case 'lost':
      return 'Connection lost'
  }
}

/** A line format in words. */
export function lineFormatWords(format: LineFormatChoice): string {
  if (format.name === 'number') return 'one number a line'
  if (format.name === 'checked') return 'checked lines with sequence and clock'
  return format.columns.length === 0 ? 'columns' : `columns: ${format.columns.join(', ')}`
}

/** An instant for people, in local time: "25 Nov 2026, 14:05". */
export function instantWords(instant: string): string {
  return new Date(instant).toLocaleString('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  })
}

/** How long ago, in whole steps that need no second look. */
export function ageWords(seconds: number): string {
  if (seconds < 60) return `${Math.max(Math.round(seconds), 0)} s`
  if (seconds < 5400) return `${Math.round(seconds / 60)} min`
  return `${Math.round(seconds / 3600)} h`
}
