// Held by tests/acquisition/virtual/loading/planLoading.spec.ts.
import type { RandomStream } from '#domain/numbers/random.ts'
import type { LoadBuilder } from './loadSegment.ts'
import type { VirtualSpecimen } from './specimen.ts'

/* What hand, press and specimen do to a load: the moves from which loadingPlan.ts makes a whole loading. */

/** A local high of the load, and how far it came down before it went up again or the specimen failed. */
export type LoadHigh = { timeS: number; forceN: number; fallN: number }

/** Slope of the drive, N/s, and its change, N/s². */
export type Slope = { slope: number; slopeChange: number }

/** Slack, then a slope that softens: reaches `targetN` after the specimen's loading time. Returns the slope's course. */
export function seat(load: LoadBuilder, specimen: VirtualSpecimen): Slope {
  const seatingS = specimen.seatingShare * specimen.loadingS
  const drivenS = specimen.loadingS - seatingS
  // strength = slope (seatingS / 2 + drivenS (1 - softening / 2)), the contact growing linearly while slack is taken up.
  const slope = specimen.strengthN / (seatingS / 2 + drivenS * (1 - specimen.softening / 2))
  load.drive(seatingS, 0, slope / seatingS)
  return { slope, slopeChange: (-specimen.softening * slope) / drivenS }
}

/** Drives on from the present load to `targetN`; returns the slope with which it arrives there. */
export function driveTo(load: LoadBuilder, targetN: number, course: Slope): number {
  const { slope, slopeChange } = course
  const missingN = targetN - load.forceN
  const arrival = Math.sqrt(Math.max(slope * slope + 2 * slopeChange * missingN, (0.2 * slope) ** 2))
  const durationS = (2 * missingN) / (slope + arrival)
  load.drive(durationS, slope, (arrival - slope) / durationS)
  return arrival
}

/** The crack that runs through a bond of this specimen. */
export function crackOf(specimen: VirtualSpecimen, ringFactor = 1) {
  const { crackS, ringShare, ringS, ringHz } = specimen
  return { fallS: crackS, ringShare: ringShare * ringFactor, ringS, ringHz }
}

/** Friction on the broken faces, then the press is let back. */
export function releaseAfterBreak(load: LoadBuilder, random: RandomStream, frictionN: number): void {
  load.drive(random.between(0.3, 2.5), -0.05 * frictionN)
  const fallS = random.between(0.05, 0.25)
  load.letGo(12 * fallS, 0, fallS)
}

/** Strokes of a hand pump with pauses in which the load relaxes; returns the slope with which it arrives at the target. */
export function pumpTo(
  load: LoadBuilder,
  random: RandomStream,
  targetN: number,
  loadingS: number,
  pause: (high: LoadHigh) => void,
): number {
  const periodS = random.between(0.6, 1.3)
  const strokes = Math.max(4, Math.round(loadingS / periodS))
  const relaxing = random.between(0.01, 0.04)
  for (;;) {
    const strokeS = periodS * random.between(0.35, 0.55)
    const liftN = (targetN / strokes) * random.between(0.8, 1.35) + relaxing * load.forceN
    const share = (targetN - load.forceN) / liftN
    if (share <= 1) {
      // Smoothstep 3w² − 2w³ = share, by halving the interval.
      let low = 0
      let high = 1
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2
        if (middle * middle * (3 - 2 * middle) < share) low = middle
        else high = middle
      }
      load.stroke(low * strokeS, strokeS, liftN)
      return (liftN * 6 * low * (1 - low)) / strokeS
    }
    load.stroke(strokeS, strokeS, liftN)
    const high = { timeS: load.timeS, forceN: load.forceN }
    load.letGo(periodS - strokeS, load.forceN * (1 - relaxing), 0.2)
    pause({ ...high, fallN: high.forceN - load.forceN })
  }
}

/**
 * The press stands still while the specimen relaxes, then drives on from there. `fallN` of the high returned: what relaxed.
 */
export function holdLoad(load: LoadBuilder, random: RandomStream): LoadHigh {
  const high = { timeS: load.timeS, forceN: load.forceN }
  const relaxing = random.between(0.003, 0.04)
  load.letGo(random.between(2.5, 10), load.forceN * (1 - relaxing), random.between(0.4, 3))
  return { ...high, fallN: high.forceN - load.forceN }
}

/** The press is let back slowly, not all the way. `fallN` of the high returned: how far. */
export function letDown(load: LoadBuilder, random: RandomStream): LoadHigh {
  const high = { timeS: load.timeS, forceN: load.forceN }
  const fallS = random.between(0.6, 1.6)
  load.letGo(random.between(2.5, 4) * fallS, load.forceN * random.between(0.25, 0.7), fallS)
  return { ...high, fallN: high.forceN - load.forceN }
}
