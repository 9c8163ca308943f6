import { curveEventKind, type Flag, type Outcome } from '#contract/breaks/evaluation.ts'
import { writeFixed } from '../units/numbers.ts'
import { type Quantity, quantitiesIn } from '../units/quantities.ts'
import { instantWords } from '../units/times.ts'
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

const systems = [quantitiesIn('SI'), quantitiesIn('US')]

/** A figure under its name in every unit in which a list may show it, without thin spaces: "peak 5939 N, peak 1335 lbf". */
export function figureToFind(name: string, stored: number | null, quantity: 'force' | 'strength' | 'area' | 'length') {
  if (stored === null) return ''
  return systems.map((system) => `${name} ${plain(system[quantity], stored)}`).join(' ')
}

const plain = ({ number, unit }: Quantity, stored: number) => `${number(stored).replaceAll('\u2009', '')} ${unit}`

/** All words by which a break can be found in a list: what its row shows, and the events of its curve. */
export function breakToFind(shown: ShownBreak): string {
  const { startedAt, flags, events, peakN, strengthMPa, woodFailurePercent, simulated } = shown
  return [
    instantWords(startedAt),
    outcomeWord(shown),
    ...flags.map((flag) => flagNames[flag]),
    ...events.map((kind) => {
      const known = curveEventKind.safeParse(kind)
      return known.success ? eventNames[known.data] : kind
    }),
    figureToFind('peak', peakN, 'force'),
    figureToFind('strength', strengthMPa, 'strength'),
    woodFailurePercent === null ? '' : `wood failure ${writeFixed(woodFailurePercent, 0)} %`,
    simulated ? 'simulated' : '',
  ].join(' ')
}
