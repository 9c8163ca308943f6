import type { PullDecision } from '#contract/programme/pull.ts'
import type { PullState, PullSummary, SeriesStock } from '#contract/programme/pullProcedures.ts'
import type { Series } from '#contract/programme/study.ts'
import { plusDays } from '#domain/programme/calendar/calendarDay.ts'
import { gapInWords, joined } from '../breaks/groupName.ts'
import { ageInMonthsWords, calendarDayWords } from '../units/calendarDays.ts'
import { countOf } from '../units/counts.ts'
import type { Quantity } from '../units/quantities.ts'

/** How a pull stands, in a word or two. */
export const pullStateWords: Record<PullState, string> = {
  planned: 'planned',
  soon: 'soon',
  due: 'due',
  late: 'late',
  missed: 'missed',
  done: 'done',
  skipped: 'skipped',
}

/** What a state means for the person, in a sentence. */
export const pullStateMeaning: Record<PullState, string> = {
  planned: 'Its window opens in more than a month, or its blocks are not glued yet.',
  soon: 'Its window opens within a month.',
  due: 'Its window is open: break the blocks until the day itself.',
  late: 'The day has passed and the window is still open: break the blocks now.',
  missed: 'The window has closed over blocks that were not broken; they are no longer of this age.',
  done: 'No block waits any more.',
  skipped: 'Somebody decided not to make it.',
}

/** What a pull is called on a page and in a calendar. */
export function pullTitle({ ageMonths, studyTitle }: Pick<PullSummary, 'ageMonths' | 'studyTitle'>): string {
  return `Pull ${pullAgeWords(ageMonths)}: ${studyTitle}`
}

const pullAgeWords = (ageMonths: number) => (ageMonths === 0 ? 'at once' : `after ${ageInMonthsWords(ageMonths)}`)

/** For which pull a block of a study is kept, and when that is due; `pull` null: it is not known, or does not matter any more. */
export function keptForWords(ageMonths: number | null, pull: Pick<PullSummary, 'dueOn' | 'state'> | null): string {
  if (ageMonths === null) return 'a spare'
  const kept = `for the pull ${pullAgeWords(ageMonths)}`
  return pull === null ? kept : `${kept}: ${calendarDayWords(pull.dueOn)}, ${pullStateWords[pull.state]}`
}

/** What a calendar says of a pull: nothing that changes while nobody decides anything about it. */
export function pullDescription(pull: PullSummary, reason: string | null): string {
  const { gluedOn, windowDays, blocks, plannedOn, dueOn } = pull
  return [
    gluedOn === null ? 'Not glued yet: counted from the planned start.' : `Glued on ${calendarDayWords(gluedOn)}.`,
    blocks.planned === 0 ? '' : `${countOf(blocks.planned, 'block')}.`,
    windowWords(windowDays),
    dueOn === plannedOn ? '' : `Planned for ${calendarDayWords(plannedOn)}.`,
    reason === null ? '' : `Reason: ${reason}`,
  ]
    .filter((sentence) => sentence !== '')
    .join('\n')
}

/** How far from its day a pull may be made. */
export function windowWords(windowDays: number): string {
  return windowDays === 0 ? 'On the day itself.' : `Up to ${countOf(windowDays, 'day')} early or late.`
}

/** The first and the last day on which a pull may be made; none before its blocks were glued. */
export function windowDaysWords({
  dueOn,
  windowDays,
  gluedOn,
}: Pick<PullSummary, 'dueOn' | 'windowDays' | 'gluedOn'>): string {
  if (windowDays === 0) return calendarDayWords(dueOn)
  const opens = plusDays(dueOn, -windowDays)
  const from = gluedOn !== null && gluedOn > opens ? gluedOn : opens
  const [first, last] = [from, plusDays(dueOn, windowDays)].map(calendarDayWords)
  const isOneYear = first!.slice(-4) === last!.slice(-4)
  return `${isOneYear ? first!.slice(0, -5) : first} to ${last}`
}

/** How many blocks of a pull wait, in a few words, with what became of the others. */
export function pullBlocksWords({ planned, waiting, broken, lost }: PullSummary['blocks'], glued: boolean): string {
  if (!glued) return planned === 0 ? 'not allocated yet' : `${countOf(planned, 'block')}, not glued yet`
  const parts = [
    waiting === 0 ? '' : `${waiting} waiting`,
    broken === 0 ? '' : `${broken} broken`,
    lost === 0 ? '' : `${lost} lost`,
  ].filter((part) => part !== '')
  return parts.length === 0 ? 'no block' : parts.join(', ')
}

/** What there is to do, in one line; null: nothing within a month, and nothing missed. */
export function dueLine(pulls: readonly Pick<PullSummary, 'state'>[]): string | null {
  const counted = (['late', 'due', 'soon', 'missed'] as const)
    .map((state) => ({ state, count: pulls.filter((pull) => pull.state === state).length }))
    .filter(({ count }) => count > 0)
  if (counted.length === 0) return null
  return `Pulls: ${counted.map(({ state, count }) => `${count} ${pullStateWords[state]}`).join(', ')}`
}

/** What the blocks of a series have in common. */
export function seriesWords(
  { adhesive, jointType, gapMm, exposure }: Omit<Series, 'gapMm'> & { gapMm: number | null },
  length: Pick<Quantity, 'text'>,
): string {
  const gap = gapMm === null ? '' : gapInWords(gapMm, length.text)
  return joined([adhesive, jointType, gap, exposure])
}

/** What was decided about a pull, by whom and why. */
export function pullDecisionWords(
  { plannedOn }: Pick<PullSummary, 'plannedOn'>,
  { kind, by, reason }: PullDecision,
): string {
  const what = { moved: 'moved', skipped: 'skipped', added: 'added', restored: 'set as planned again' }
  const from = kind === 'moved' ? ` from ${calendarDayWords(plannedOn)}` : ''
  return `${what[kind]}${from} by ${by}: ${reason}`
}

/** What a word on a pull does. */
export const pullDecisionMeaning: Record<'moved' | 'skipped' | 'restored', string> = {
  moved: 'The pull is made on another day; its age stays as planned.',
  skipped: 'The pull is not made; its blocks are free for other ages.',
  restored: 'The pull stands again as it was planned.',
}

type AgeStock = SeriesStock['ages'][number]

/** How many blocks an age has of those planned, and how many come from spares. */
export function shortageWords({ planned, blocks, filled }: AgeStock): string {
  const from = filled === 0 ? '' : `, ${filled} of them spares or from closed pulls`
  return `${blocks} of ${planned}${from}`
}

/** What lost blocks and closed pulls mean for all open ages of a study, in a sentence or two. */
export function stockSummary(series: readonly SeriesStock[]): string {
  const ages = series.flatMap((one) => one.ages)
  const short = ages.filter(({ planned, blocks }) => blocks < planned)
  const filled = ages.filter(({ planned, blocks, filled: taken }) => taken > 0 && blocks >= planned)
  const free = series.reduce((sum, one) => sum + one.free, 0)
  if (series.length === 0) return 'Nothing of the study is glued yet.'
  return [
    short.length === 0
      ? 'Every open age has its blocks.'
      : `${countOf(short.length, 'cell')} will have fewer blocks than planned.`,
    filled.length === 0 ? '' : `${countOf(filled.length, 'cell')} can be filled from spares or closed pulls.`,
    `${countOf(free, 'block')} ${free === 1 ? 'is' : 'are'} left besides.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
