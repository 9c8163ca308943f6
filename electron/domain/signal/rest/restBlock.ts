/** One block of samples at rest, of which only sums are kept. */
export type RestBlock = {
  /** Takes a sample; true when the block is full. */
  push(timeS: number, force: number): boolean
  clear(): void
  samples(): number
  /** From its first sample to its last, s. */
  lengthS(): number
  mean(): number
  /** Variance about the block's own straight line, so that drift does not count; n − 2 degrees of freedom. */
  varianceAboutLine(): number
}

/** A block is full with so many samples over so long, s. */
export const blockSamples = 16
export const blockS = 0.2

/**
 * Sums of times and forces from the block's first sample on, so that large offsets cost no digits.
 *
 *   s² = (Sff − Stf² / Stt) / (n − 2)      S sums of squares and products about the means
 *
 * Checked: tests/domain/signal/rest/restBlock.spec.ts against JCGM 100 H.3, tests/domain/signal/rest/idleNoise.spec.ts.
 */
export function createRestBlock(): RestBlock {
  let sums = noSums(Number.NaN, Number.NaN)

  return {
    push(timeS, force) {
      if (sums.n === 0) sums = noSums(timeS, force)
      const t = timeS - sums.firstS
      const f = force - sums.first
      sums.n += 1
      sums.lastS = timeS
      sums.t += t
      sums.f += f
      sums.tt += t * t
      sums.ff += f * f
      sums.tf += t * f
      return sums.n >= blockSamples && t >= blockS
    },
    clear() {
      sums.n = 0
    },
    samples: () => sums.n,
    lengthS: () => sums.lastS - sums.firstS,
    mean: () => sums.first + sums.f / sums.n,
    varianceAboutLine() {
      const { n, t, f } = sums
      const tt = sums.tt - (t * t) / n
      const ff = sums.ff - (f * f) / n
      const tf = sums.tf - (t * f) / n
      return Math.max(0, ff - (tf * tf) / tt) / (n - 2)
    },
  }
}

function noSums(firstS: number, first: number) {
  return { n: 0, firstS, first, lastS: firstS, t: 0, f: 0, tt: 0, ff: 0, tf: 0 }
}
