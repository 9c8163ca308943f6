import { filterTwoPass, type LowPass } from '#domain/signal/filters/twoPass.ts'

/**
 * Gain of both passes at a frequency, dB: a long sine goes through, and its amplitude in the middle is found by least
 * squares (nothing is shifted, so the cosine is left out).
 */
export function twoPassGainDb(lowPass: LowPass, frequencyHz: number, rateHz: number): number {
  const angle = (2 * Math.PI * frequencyHz) / rateHz
  const samples = Math.max(2000, Math.round((40 * rateHz) / frequencyHz))
  const lead = 5 * samples
  const sine = Float64Array.from({ length: samples + 2 * lead }, (_, i) => Math.sin(angle * i))
  const filtered = filterTwoPass(sine, lowPass, 0)
  let both = 0
  let own = 0
  for (let i = lead; i < lead + samples; i++) {
    both += filtered[i]! * sine[i]!
    own += sine[i]! * sine[i]!
  }
  return 20 * Math.log10(both / own)
}
