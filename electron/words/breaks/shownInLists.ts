import { writeFixed } from '../units/numbers.ts'
import { type Quantity, quantitiesIn } from '../units/quantities.ts'
import { dayToFind, instantWords } from '../units/times.ts'

const systems = [quantitiesIn('SI'), quantitiesIn('US')]

/** A figure under its name in every unit in which a list may show it, without thin spaces: "peak 5939 N, peak 1335 lbf". */
export function figureToFind(name: string, stored: number | null, quantity: 'force' | 'strength' | 'area' | 'length') {
  if (stored === null) return ''
  return systems.map((system) => `${name} ${plain(system[quantity], stored)}`).join(' ')
}

const plain = ({ number, unit }: Quantity, stored: number) =>
  `${number(stored).replaceAll('\u2009', '')} ${unit.replace('²', '2')}`

/** The moment of a break, in every way in which people look for it. */
export function momentToFind(startedAt: string): string {
  return `${instantWords(startedAt)} ${dayToFind(startedAt)}`
}

/** The figures by which a result can be found: its load in N, its strength in MPa, and its wood failure. */
export function loadsToFind(
  peakN: number | null,
  strengthMPa: number | null,
  woodFailurePercent: number | null,
): string {
  return [
    figureToFind('peak', peakN, 'force'),
    figureToFind('strength', strengthMPa, 'strength'),
    woodFailurePercent === null ? '' : `wood failure ${writeFixed(woodFailurePercent, 0)} %`,
  ].join(' ')
}
