// Held by tests/acquisition/virtual/loading/planLoading.spec.ts.
import type { RandomStream } from '#domain/numbers/random.ts'
import type { PlannedLoading } from './loadingDraft.ts'
import { crackOf, releaseAfterBreak } from './loadingMoves.ts'
import type { LoadingKind } from './loadingPlan.ts'
import type { VirtualSpecimen } from './specimen.ts'

/** A crack has run through when it is down by this many of its time constants (to 10 % of its fall). */
const crackTimeConstants = Math.log(10)

/** The specimen fails at the load that it is under, and the press is let back. */
export function breakFinally(
  kind: LoadingKind,
  planned: PlannedLoading,
  specimen: VirtualSpecimen,
  random: RandomStream,
): void {
  const { load } = planned
  const frictionN = specimen.frictionShare * specimen.strengthN
  if (kind !== 'stick-slip' || load.forceN >= planned.peakN) {
    planned.peakN = load.forceN
    planned.peakTimeS = load.timeS
  }
  const dropS = load.timeS
  planned.highs.push({ timeS: dropS, forceN: load.forceN, fallN: load.forceN - frictionN })
  const steps = kind === 'progressive' ? tearInSteps(planned, specimen, random) : 0
  planned.breakTimeS = load.timeS
  planned.afterBreakN = frictionN
  const lengthS = load.timeS - dropS + crackTimeConstants * specimen.crackS
  planned.finalDrop = { manner: steps > 0 ? 'progressive' : 'brittle', steps, timeS: dropS, lengthS }
  load.crack(12 * specimen.crackS + 8 * specimen.ringS, frictionN, crackOf(specimen))
  releaseAfterBreak(load, random, frictionN)
}

/** The bond gives way in steps before the last, clean fracture; returns how many. They leave at least 55 % of the peak for it. */
function tearInSteps(
  { load, peakN, loadingRateNPerS }: PlannedLoading,
  specimen: VirtualSpecimen,
  random: RandomStream,
) {
  const steps = random.wholeBetween(2, 5)
  let levelN = peakN
  for (let step = 0; step < steps; step++) {
    const lowestN = peakN * (0.62 + (0.3 * (steps - step - 1)) / steps)
    const targetN = Math.max(lowestN, levelN * random.between(0.85, 0.95))
    load.crack(random.between(0.03, 0.25), targetN, crackOf(specimen, 0.4), 0.2 * loadingRateNPerS)
    levelN = load.forceN
  }
  return steps
}
