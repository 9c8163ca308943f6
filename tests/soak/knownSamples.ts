import type { SampleBlock } from '#contract/breaks/curve.ts'

/** Samples of one capture that follow from its number alone, so that both sides of a killed process know what must be stored. */
export function knownSamples(seed: number, start: number, count: number): SampleBlock {
  const timeUs = new Float64Array(count)
  const readings = new Float64Array(count)
  for (let k = 0; k < count; k++) {
    const i = start + k
    timeUs[k] = i * 125
    // Knuth's multiplicative hash (TAOCP 3, 6.4) as noise on a ramp.
    readings[k] = i * 40 + (((i + seed * 7919) * 2_654_435_761) % 4096)
  }
  return { timeUs, readings }
}
