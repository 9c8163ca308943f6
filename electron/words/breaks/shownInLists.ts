import { type Flag, type Outcome, outcome } from '#contract/breaks/evaluation.ts'
import { writeFixed } from '../units/numbers.ts'
import { type Quantity, quantitiesIn } from '../units/quantities.ts'
import { dayToFind, instantWords } from '../units/times.ts'
import { eventNames } from './eventWords.ts'
import { flagNames } from './flagWords.ts'
import { outcomeWord } from './outcomeWords.ts'

/** What a row of a list shows of a break. Forces in N, strength in MPa. */
export type ShownBreak = {
  startedAt: string
  outcome: Outcome | null
  ending: Parameters<typeof outcomeWord>[0]['ending']
  setAside: string | null
  flags: readonly Flag[]
  /** Kinds of the events of its curve, as they are stored. */
  events: readonly string[]
  peakN: number | null
  strengthMPa: number | null
  woodFailurePercent: number | null
  simulated: boolean
}

const names: Readonly<Record<string, string>> = eventNames
const systems = [quantitiesIn('SI'), quantitiesIn('US')]

/** A figure under its name in every unit in which a list may show it, without thin spaces: "peak 5939 N, peak 1335 lbf". */
export function figureToFind(name: string, stored: number | null, quantity: 'force' | 'strength' | 'area' | 'length') {
  if (stored === null) return ''
  return systems.map((system) => `${name} ${plain(system[quantity], stored)}`).join(' ')
}

const plain = ({ number, unit }: Quantity, stored: number) =>
  `${number(stored).replaceAll('\u2009', '')} ${unit.replace('²', '2')}`

/** The words by which a break can be found in a list: its outcome, its remarks, and the events of its curve. */
export function breakWordsToFind(
  shown: Pick<ShownBreak, 'outcome' | 'ending' | 'setAside' | 'flags' | 'events' | 'simulated'>,
): string {
  const { flags, events, simulated } = shown
  return [
    outcomeWord(shown),
    ...flags.map((flag) => flagNames[flag]),
    ...events.map((kind) => names[kind] ?? kind),
    simulated ? 'simulated' : '',
  ].join(' ')
}

/** Every word that `breakWordsToFind` can give. */
export function everyBreakWord(): string {
  const endings = [null, 'complete', 'interrupted', 'recovered'] as const
  const outcomes = [null, ...outcome.options].flatMap((one) =>
    endings.flatMap((ending) => [null, ''].map((setAside) => outcomeWord({ outcome: one, ending, setAside }))),
  )
  const events = Object.entries(names).flat()
  return [...new Set([...outcomes, ...Object.values(flagNames), ...events, 'simulated'])].join(' ')
}

/** The figures by which it can be found: when it was, its loads, and its wood failure. */
export function breakFiguresToFind({
  startedAt,
  peakN,
  strengthMPa,
  woodFailurePercent,
}: Pick<ShownBreak, 'startedAt' | 'peakN' | 'strengthMPa' | 'woodFailurePercent'>): string {
  return [
    instantWords(startedAt),
    dayToFind(startedAt),
    figureToFind('peak', peakN, 'force'),
    figureToFind('strength', strengthMPa, 'strength'),
    woodFailurePercent === null ? '' : `wood failure ${writeFixed(woodFailurePercent, 0)} %`,
  ].join(' ')
}
