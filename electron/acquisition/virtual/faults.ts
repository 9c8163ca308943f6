// Held by tests/acquisition/virtual/benchModel.spec.ts.
import type { RandomStream } from '#domain/numbers/random.ts'
import type { LoadingPlan } from './loading/loadingPlan.ts'

/** Electrical faults during one loading, as sample numbers counted from its first contact. */
export type Faults = {
  /** Samples that carry a wrong code, with how far it lies from the right one, N. */
  glitches: Map<number, number>
  /** Samples that never leave the amplifier: [first, one past the last]. */
  gaps: [number, number][]
}

/** A glitch must be far from both neighbours and alone: so many samples to anything else that jumps. */
const clearSamples = 6

function sampleOf(timeS: number, rateHz: number): number {
  return Math.ceil(timeS * rateHz)
}

function nothingNear(candidate: number, taken: readonly number[]): boolean {
  return taken.every((other) => Math.abs(other - candidate) >= clearSamples)
}

/** Lays one to four glitches of one or two samples over a loading, clear of its cracks. At low rates fewer may fit. */
export function planGlitches(plan: LoadingPlan, rateHz: number, random: RandomStream): Faults['glitches'] {
  const glitches: Faults['glitches'] = new Map()
  const taken = plan.segments.filter((segment) => segment.fallN !== 0).map((s) => sampleOf(s.startS, rateHz))
  const lastS = plan.breakTimeS ?? plan.durationS
  for (let wanted = random.wholeBetween(1, 4); wanted > 0; wanted--) {
    const at = sampleOf(random.between(0, lastS), rateHz)
    const width = random.unit() < 0.3 ? 2 : 1
    const jumpN = plan.peakN * random.between(0.3, 2) * (random.unit() < 0.5 ? -1 : 1)
    const second = jumpN * random.between(0.9, 1.1)
    if (!nothingNear(at, taken)) continue
    taken.push(at)
    glitches.set(at, jumpN)
    if (width === 2) glitches.set(at + 1, second)
  }
  return glitches
}

/** Loses one to three stretches of samples; in about a quarter of the loadings one of them lies over the break. */
export function planGaps(plan: LoadingPlan, rateHz: number, random: RandomStream): Faults['gaps'] {
  const lastS = plan.breakTimeS ?? plan.durationS
  const gaps: Faults['gaps'] = []
  const wanted = random.wholeBetween(1, 3)
  const overBreak = plan.breakTimeS !== null && random.unit() < 0.25
  for (let i = 0; i < wanted; i++) {
    const missing = Math.max(1, Math.round(random.between(0, 0.3) * rateHz))
    const share = random.between(0.2, 0.8)
    const at =
      i === 0 && overBreak
        ? sampleOf(lastS, rateHz) - Math.ceil(share * missing)
        : sampleOf(random.between(0, lastS), rateHz)
    if (at < 1 || gaps.some(([from, to]) => at < to + clearSamples && at + missing + clearSamples > from)) continue
    gaps.push([at, at + missing])
  }
  return gaps.sort((a, b) => a[0] - b[0])
}
