// Held by tests/acquisition/virtual/loading/planLoading.spec.ts.
import type { RandomStream } from '#domain/numbers/random.ts'

/** A glued beech lap block as the model sees it, and how this one is pressed. All values are drawn; none is measured. */
export type VirtualSpecimen = {
  areaMm2: number
  strengthMPa: number
  strengthN: number
  /** From first contact to failure, s. */
  loadingS: number
  /** Share of that time spent taking up slack. */
  seatingShare: number
  /** How much of the slope is lost on the way to failure, 0: none. */
  softening: number
  /** Load that friction between the broken faces still carries, share of the strength. */
  frictionShare: number
  /** Time constant of a crack running through the bond, s. */
  crackS: number
  ringShare: number
  ringHz: number
  ringS: number
}

/** Draws the next specimen. `weakestMPa` keeps it above a load that a scenario must reach. */
export function drawSpecimen(random: RandomStream, weakestMPa = 4): VirtualSpecimen {
  const areaMm2 = random.between(29.2, 30.6) * random.between(19.4, 20.4)
  const strengthMPa = random.between(weakestMPa, 16)
  return {
    areaMm2,
    strengthMPa,
    strengthN: strengthMPa * areaMm2,
    loadingS: random.between(5, 60),
    seatingShare: random.between(0.03, 0.15),
    softening: random.between(0, 0.35),
    frictionShare: random.between(0.02, 0.12),
    crackS: random.between(0.0003, 0.002),
    ringShare: random.between(0.05, 0.3),
    ringHz: random.between(70, 400),
    ringS: random.between(0.004, 0.03),
  }
}
