import type { Limits, TestPractice } from '#contract/settings/practice.ts'
import type { Quantities } from '../units/quantities.ts'

/** A limit of a practice, by the figure that it is on. */
export type LimitKey = 'timeToFailureS' | 'rateNPerS' | 'rateMPaPerS' | 'speedMmPerMin'
export const limitKeys: readonly LimitKey[] = ['timeToFailureS', 'rateNPerS', 'rateMPaPerS', 'speedMmPerMin']

/** What a limit is on, with its unit as shown. */
export function limitWords(key: LimitKey, { force, strength, length }: Quantities) {
  switch (key) {
    case 'timeToFailureS':
      return { name: 'Time to failure', unit: 's', factor: 1 }
    case 'rateNPerS':
      return { name: 'Loading rate', unit: `${force.unit}/s`, factor: force.factor }
    case 'rateMPaPerS':
      return { name: 'Rate of shear stress', unit: `${strength.unit}/s`, factor: strength.factor }
    case 'speedMmPerMin':
      return { name: 'Speed of the moving head', unit: `${length.unit}/min`, factor: length.factor }
  }
}

/** Limits in words: "5 to 60 s", "at most 1 %"; null: none on either side. */
export function limitText({ least, most }: Limits, unit: string, factor: number): string | null {
  if (least === null && most === null) return null
  const shown = (value: number) => String(Number((value * factor).toPrecision(4)))
  if (least === null) return `at most ${shown(most!)} ${unit}`
  if (most === null) return `at least ${shown(least)} ${unit}`
  return least === most ? `${shown(least)} ${unit}` : `${shown(least)} to ${shown(most)} ${unit}`
}

/** Everything that a practice asks for, in words. */
export function practiceWords(practice: TestPractice, quantities: Quantities): string {
  const parts = limitKeys.flatMap((key) => {
    const { name, unit, factor } = limitWords(key, quantities)
    const text = limitText(practice[key], unit, factor)
    return text === null ? [] : [`${name.toLowerCase()} ${text}`]
  })
  if (practice.samplingBoundPercent !== null) parts.push(`sampling bound at most ${practice.samplingBoundPercent} %`)
  return parts.length === 0 ? 'no limits' : parts.join('; ')
}
