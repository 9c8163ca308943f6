import { countOf } from '../../units/counts.ts'
import type { Quantity } from '../../units/quantities.ts'
import { signedForce } from './signedForce.ts'

type Control = {
  count: number
  centreN: number | null
  /** Lower and upper; no lower one where only an upper one means something. */
  limitsN: readonly [number | null, number] | null
  /** Names of the values outside. */
  outside: readonly string[]
}

/** What a control chart says: its centre and limits, and which values lie outside. */
export function controlWords({ count, centreN, limitsN, outside }: Control, force: Quantity): string {
  const sentences = [countOf(count, 'value')]
  if (centreN !== null) sentences.push(`Centre ${signedForce(centreN, force)}`)
  if (limitsN === null) return [...sentences, 'There are no limits yet.'].join('. ')
  const [lower, upper] = limitsN
  sentences.push(
    lower === null
      ? `Upper limit ${signedForce(upper, force)}`
      : `Limits ${signedForce(lower, force)} to ${signedForce(upper, force)}`,
    outside.length === 0 ? 'None is outside.' : `Outside: ${outside.join(', ')}.`,
  )
  return sentences.join('. ')
}
