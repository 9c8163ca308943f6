import type { ScenarioName } from '#contract/bench/source.ts'
import type { RandomStream } from '#domain/numbers/random.ts'
import { crackOf, driveTo, holdLoad, type LoadHigh, letDown, pumpTo, releaseAfterBreak, seat } from './loadingMoves.ts'
import { forceAt, LoadBuilder, type LoadSegment } from './loadSegment.ts'
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
  /** Slope of the straight line from where the load first reaches 10 % of the peak to where it first reaches 90 %. */
  meanRateNPerS: number
  /** In order of time; the last one is where the specimen failed or was let go from. */
  highs: LoadHigh[]
  /** The press stood still and was then driven on. */
  holds: { timeS: number; endTimeS: number; fromN: number; relaxedN: number }[]
  /** The press was let back slowly and then driven on. */
  reloads: { timeS: number; lowestTimeS: number; fromN: number; lowestN: number }[]
  /** The load all but stood still while the specimen gave way, until it failed. */
  plateau: { timeS: number; endTimeS: number } | null
  /** The fall of the failure: how many steps before the last, clean fracture; from the first of them to the end of that. */
  finalDrop: { manner: 'brittle' | 'progressive'; steps: number; timeS: number; lengthS: number } | null
}

/** A crack has run through when it is down by this many of its time constants (to 10 % of its fall). */
const crackTimeConstants = Math.log(10)

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
  const highs: LoadHigh[] = []
  const holds: LoadingPlan['holds'] = []
  const reloads: LoadingPlan['reloads'] = []
  let plateau: LoadingPlan['plateau'] = null
  let finalDrop: LoadingPlan['finalDrop'] = null

  if (kind === 'hand-pumped') {
    rate = pumpTo(load, random, strengthN, specimen.loadingS, (high) => highs.push(high))
  } else {
    const course = seat(load, specimen)
    seatingEndS = load.timeS
    const slip = (fromN: number, dropN: number): { timeS: number; fromN: number; dropN: number } => {
      const drop = { timeS: load.timeS, fromN, dropN }
      highs.push({ timeS: load.timeS, forceN: fromN, fallN: dropN })
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
      highs.push({ timeS: peakTimeS, forceN: peakN, fallN: peakN })
      const relaxing = random.between(0.01, 0.05)
      load.letGo(random.between(0.5, 4), peakN * (1 - relaxing), random.between(0.5, 2))
      const fallS = random.between(0.8, 2.5)
      load.letGo(9 * fallS, 0, fallS)
    } else if (kind === 'held') {
      const arrival = driveTo(load, strengthN * random.between(0.25, 0.85), course)
      const again = random.unit() < 0.4
      const high = again ? letDown(load, random) : holdLoad(load, random)
      highs.push(high)
      const { timeS, forceN: fromN, fallN } = high
      if (again) reloads.push({ timeS, lowestTimeS: load.timeS, fromN, lowestN: load.forceN })
      else holds.push({ timeS, endTimeS: load.timeS, fromN, relaxedN: fallN })
      rate = driveTo(load, strengthN, { slope: arrival, slopeChange: again ? 0 : course.slopeChange })
    } else if (kind === 'plateau') {
      const creepN = strengthN * random.between(0, 0.015)
      const arrival = driveTo(load, strengthN - creepN, course)
      const timeS = load.timeS
      const plateauS = Math.max(random.between(2, 6), creepN / (0.1 * arrival))
      rate = creepN / plateauS
      load.drive(plateauS, rate)
      plateau = { timeS, endTimeS: load.timeS }
    } else {
      rate = driveTo(load, strengthN, course)
    }
  }

  if (outcome === 'break') {
    if (kind !== 'stick-slip' || load.forceN >= peakN) {
      peakN = load.forceN
      peakTimeS = load.timeS
    }
    const dropS = load.timeS
    let steps = 0
    highs.push({ timeS: load.timeS, forceN: load.forceN, fallN: load.forceN - frictionN })
    if (kind === 'progressive') {
      // Steps leave at least 55 % of the peak for the last, clean fracture.
      steps = random.wholeBetween(2, 5)
      let levelN = peakN
      for (let step = 0; step < steps; step++) {
        const lowestN = peakN * (0.62 + (0.3 * (steps - step - 1)) / steps)
        const targetN = Math.max(lowestN, levelN * random.between(0.85, 0.95))
        load.crack(random.between(0.03, 0.25), targetN, crackOf(specimen, 0.4), 0.2 * rate)
        levelN = load.forceN
      }
    }
    breakTimeS = load.timeS
    const lengthS = breakTimeS - dropS + crackTimeConstants * specimen.crackS
    finalDrop = { manner: steps > 0 ? 'progressive' : 'brittle', steps, timeS: dropS, lengthS }
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
    meanRateNPerS: meanRate(load.segments, peakN),
    highs,
    holds,
    reloads,
    plateau,
    finalDrop,
  }
}

function meanRate(segments: readonly LoadSegment[], peakN: number): number {
  const fromS = firstReachedS(segments, 0.1 * peakN)
  return (0.8 * peakN) / (firstReachedS(segments, 0.9 * peakN) - fromS)
}

const looksPerSegment = 500

/** When a load first reaches a force that it does reach: looked for in steps, then by halving the interval. */
function firstReachedS(segments: readonly LoadSegment[], forceN: number): number {
  for (const segment of segments)
    for (let look = 1; look <= looksPerSegment; look++) {
      const stepS = segment.durationS / looksPerSegment
      if (forceAt(segment, look * stepS) < forceN) continue
      let low = (look - 1) * stepS
      let high = look * stepS
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2
        if (forceAt(segment, middle) < forceN) low = middle
        else high = middle
      }
      return segment.startS + high
    }
  throw new RangeError('firstReachedS requires a force that the load reaches')
}
