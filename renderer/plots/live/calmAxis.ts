const steps = [1, 1.5, 2, 3, 4, 5, 6, 8] as const

/** The smallest of 1, 1.5, 2, 3, 4, 5, 6, 8 times a power of ten that is at least `value`. */
export function roundUpCalmly(value: number): number {
  if (!(value > 0) || !Number.isFinite(value)) throw new RangeError('roundUpCalmly requires a positive number')
  const power = 10 ** Math.floor(Math.log10(value))
  for (const step of steps) if (step * power >= value * (1 - 1e-12)) return step * power
  return 10 * power
}

export type CeilingRules = {
  /** The ceiling never lies below this. */
  least: number
  /** Above this share of the ceiling it grows ... */
  growAbove: number
  /** ... to where the highest value stands at this share. */
  growTo: number
}

export const calmRules: Omit<CeilingRules, 'least'> = { growAbove: 0.92, growTo: 0.5 }

/**
 * The top of a force axis that follows a growing value: it stays where it is until the value comes near, then takes one
 * generous step, so that a loading specimen changes the scale a few times and not at every frame. It never falls: the start
 * of a capture sets it anew.
 */
export function nextCeiling(current: number, highest: number, rules: CeilingRules): number {
  const least = roundUpCalmly(rules.least)
  if (current < least) return nextCeiling(least, highest, rules)
  if (!(highest > current * rules.growAbove)) return current
  return roundUpCalmly(highest / rules.growTo)
}

const windowLengthsS = [8, 12, 20, 30, 45, 60, 90, 120, 180, 240] as const

/** How many seconds the time axis shows of a capture that has run for `elapsedS`: a few fixed lengths, each left before it is full. */
export function captureWindowS(elapsedS: number): number {
  for (const length of windowLengthsS) if (elapsedS < length * 0.9) return length
  return Math.ceil(elapsedS / 0.9 / 60) * 60
}

/**
 * One frame of a movement from `shown` towards `target`: exponential with time constant `tauS`, ending exactly on the target
 * once it is within `closeEnough`. With `tauS` 0 it is there at once (reduced motion).
 */
export function glide(shown: number, target: number, frameS: number, tauS: number, closeEnough: number): number {
  if (tauS <= 0) return target
  const next = target + (shown - target) * Math.exp(-frameS / tauS)
  return Math.abs(next - target) <= closeEnough ? target : next
}
