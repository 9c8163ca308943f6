import type { ScenarioName } from '#contract/records/settings.ts'
import { LoadBuilder, type LoadSegment } from './loadSegment.ts'
import type { RandomStream } from './random.ts'
import type { VirtualSpecimen } from './specimen.ts'

/** What a specimen does; `mixed` and `idle` are benches, not behaviours. */
export type LoadingKind = Exclude<ScenarioName, 'idle' | 'mixed'>

/** The whole loading of one specimen: its stretches, and what truly happened in it. Times in s from first contact, forces in N. */
export type LoadingPlan = {
  segments: readonly LoadSegment[]
  durationS: number
  outcome: 'break' | 'unloading'
  peakN: number
  peakTimeS: number
  /** Start of the final fracture; null when there was none. */
  breakTimeS: number | null
  /** Load that stays right after the final fracture; null when there was none. */
  afterBreakN: number | null
  /** Slope of the load just before the peak, N/s. */
  loadingRateNPerS: number
  /** Slack taken up until here. */
  seatingEndS: number
  popIns: { timeS: number; fromN: number; dropN: number }[]
  stickSlip: { cycles: number; drops: { timeS: number; fromN: number; dropN: number }[] }
}

type Slope = { slope: number; slopeChange: number }

/** Slack, then a slope that softens: reaches `targetN` after the specimen's loading time. Returns the slope's course. */
function seat(load: LoadBuilder, specimen: VirtualSpecimen): Slope {
  const seatingS = specimen.seatingShare * specimen.loadingS
  const drivenS = specimen.loadingS - seatingS
  // strength = slope (seatingS / 2 + drivenS (1 - softening / 2)), the contact growing linearly while slack is taken up.
  const slope = specimen.strengthN / (seatingS / 2 + drivenS * (1 - specimen.softening / 2))
  load.drive(seatingS, 0, slope / seatingS)
  return { slope, slopeChange: (-specimen.softening * slope) / drivenS }
}

/** Drives on from the present load to `targetN`; returns the slope with which it arrives there. */
function driveTo(load: LoadBuilder, targetN: number, course: Slope): number {
  const { slope, slopeChange } = course
  const missingN = targetN - load.forceN
  const arrival = Math.sqrt(Math.max(slope * slope + 2 * slopeChange * missingN, (0.2 * slope) ** 2))
  const durationS = (2 * missingN) / (slope + arrival)
  load.drive(durationS, slope, (arrival - slope) / durationS)
  return arrival
}

function crackOf(specimen: VirtualSpecimen, ringFactor = 1) {
  const { crackS, ringShare, ringS, ringHz } = specimen
  return { fallS: crackS, ringShare: ringShare * ringFactor, ringS, ringHz }
}

/** Friction on the broken faces, then the press is let back. */
function releaseAfterBreak(load: LoadBuilder, random: RandomStream, frictionN: number): void {
  load.drive(random.between(0.3, 2.5), -0.05 * frictionN)
  const fallS = random.between(0.05, 0.25)
  load.letGo(12 * fallS, 0, fallS)
}

function pumpTo(load: LoadBuilder, random: RandomStream, targetN: number, loadingS: number): number {
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
    load.letGo(periodS - strokeS, load.forceN * (1 - relaxing), 0.2)
  }
}

/** Plans how one specimen of a kind is loaded, drawing what is left to chance. */
export function planLoading(kind: LoadingKind, specimen: VirtualSpecimen, random: RandomStream): LoadingPlan {
  const load = new LoadBuilder()
  const popIns: LoadingPlan['popIns'] = []
  const slips: LoadingPlan['popIns'] = []
  const { strengthN } = specimen
  const frictionN = specimen.frictionShare * strengthN
  let outcome: LoadingPlan['outcome'] = 'break'
  let breakTimeS: number | null = null
  let rate = 0
  let seatingEndS = 0
  let peakN = strengthN
  let peakTimeS = 0

  if (kind === 'hand-pumped') {
    rate = pumpTo(load, random, strengthN, specimen.loadingS)
  } else {
    const course = seat(load, specimen)
    seatingEndS = load.timeS
    const slip = (fromN: number, dropN: number): { timeS: number; fromN: number; dropN: number } => {
      const drop = { timeS: load.timeS, fromN, dropN }
      // Long enough for crack and ringing to die away, short enough that the drive cannot make good the drop meanwhile.
      const durationS = Math.min(12 * specimen.crackS + 4 * specimen.ringS, (0.3 * dropN) / course.slope)
      load.crack(durationS, fromN - dropN, crackOf(specimen, 0.5), course.slope)
      return drop
    }
    if (kind === 'pop-in') {
      const fromN = strengthN * random.between(0.35, 0.85)
      const arrival = driveTo(load, fromN, course)
      popIns.push(slip(fromN, fromN * random.between(0.06, 0.25)))
      rate = driveTo(load, strengthN, { slope: arrival, slopeChange: course.slopeChange })
    } else if (kind === 'stick-slip') {
      const cycles = random.wholeBetween(3, 8)
      const firstN = strengthN * random.between(0.6, 0.95)
      peakN = 0
      for (let cycle = 0; cycle < cycles; cycle++) {
        const fromN = firstN + ((strengthN - firstN) * cycle) / cycles + strengthN * random.between(-0.01, 0.01)
        rate = driveTo(load, fromN, { slope: course.slope, slopeChange: 0 })
        if (fromN > peakN) {
          peakN = fromN
          peakTimeS = load.timeS
        }
        slips.push(slip(fromN, fromN * random.between(0.07, 0.2)))
      }
      rate = driveTo(load, strengthN * random.between(0.97, 1.02), { slope: course.slope, slopeChange: 0 })
      if (load.forceN < peakN) rate = course.slope
    } else if (kind === 'unloading') {
      peakN = strengthN * random.between(0.2, 0.85)
      rate = driveTo(load, peakN, course)
      peakTimeS = load.timeS
      outcome = 'unloading'
      const relaxing = random.between(0.01, 0.05)
      load.letGo(random.between(0.5, 4), peakN * (1 - relaxing), random.between(0.5, 2))
      const fallS = random.between(0.8, 2.5)
      load.letGo(9 * fallS, 0, fallS)
    } else {
      rate = driveTo(load, strengthN, course)
    }
  }

  if (outcome === 'break') {
    if (kind !== 'stick-slip' || load.forceN >= peakN) {
      peakN = load.forceN
      peakTimeS = load.timeS
    }
    if (kind === 'progressive') {
      // Steps leave at least 55 % of the peak for the last, clean fracture.
      const steps = random.wholeBetween(2, 5)
      let levelN = peakN
      for (let step = 0; step < steps; step++) {
        const lowestN = peakN * (0.62 + (0.3 * (steps - step - 1)) / steps)
        const targetN = Math.max(lowestN, levelN * random.between(0.85, 0.95))
        load.crack(random.between(0.03, 0.25), targetN, crackOf(specimen, 0.4), 0.2 * rate)
        levelN = load.forceN
      }
    }
    breakTimeS = load.timeS
    load.crack(12 * specimen.crackS + 8 * specimen.ringS, frictionN, crackOf(specimen))
    releaseAfterBreak(load, random, frictionN)
  }

  return {
    segments: load.segments,
    durationS: load.timeS,
    outcome,
    peakN,
    peakTimeS,
    breakTimeS,
    afterBreakN: outcome === 'break' ? frictionN : null,
    loadingRateNPerS: rate,
    seatingEndS,
    popIns,
    stickSlip: { cycles: slips.length, drops: slips },
  }
}
