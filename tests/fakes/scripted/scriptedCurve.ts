import type { RawCurve } from '#contract/breaks/curve.ts'

/** Seconds of quiet before the load and after the break. */
const beforeS = 2
const afterS = 1.5

/** Numbers from 0 to 1 that are the same for the same seed (the minimal standard generator of Park and Miller, 1988). */
export function seededNumbers(seed: number): () => number {
  let state = (seed % 2147483646) + 1
  return () => {
    state = (state * 16807) % 2147483647
    return state / 2147483647
  }
}

/** A loading curve in newtons for pictures: quiet, slack, rise to `peakN` in `riseS`, fall, a little friction. No model of anything. */
export function scriptedCurve(peakN: number, riseS: number, rateHz: number, seed: number): RawCurve {
  const random = seededNumbers(seed)
  const samples = Math.round((beforeS + riseS + afterS) * rateHz)
  const timeS = new Float64Array(samples)
  const readings = new Float64Array(samples)
  for (let i = 0; i < samples; i++) {
    const time = i / rateHz
    const noise = (random() + random() + random() - 1.5) * 3
    const share = (time - beforeS) / riseS
    timeS[i] = time
    readings[i] = noise + (share < 0 ? 0 : share <= 1 ? peakN * shape(share) : peakN * 0.05 * Math.exp(1 - share))
  }
  return { timeS, readings }
}

/** A toe that straightens, and a slight bend before the end; 0 at 0, 1 at 1. */
function shape(share: number): number {
  const toe = share - 0.08 * (1 - Math.exp(-share / 0.08))
  const bend = toe - 0.12 * toe ** 4
  const end = 1 - 0.08 * (1 - Math.exp(-1 / 0.08))
  return bend / (end - 0.12 * end ** 4)
}
