// Held by tests/acquisition/virtual/loading/planLoading.spec.ts.
import type { RandomStream } from '#domain/numbers/random.ts'
import type { PlannedLoading } from './loadingDraft.ts'
import { crackOf, driveTo, holdLoad, letDown, pumpTo, type Slope, seat } from './loadingMoves.ts'
import type { LoadingKind, LoadingPlan } from './loadingPlan.ts'
import type { VirtualSpecimen } from './specimen.ts'

/** Loads a specimen up to where it fails, or is let go from. */
type Loads = (planned: PlannedLoading, specimen: VirtualSpecimen, random: RandomStream) => void
/** The same once it sits in the press; `course`: how the drive goes on from there. */
type LoadsOn = (planned: PlannedLoading, specimen: VirtualSpecimen, random: RandomStream, course: Slope) => void

const seated =
  (loadOn: LoadsOn): Loads =>
  (planned, specimen, random) => {
    const course = seat(planned.load, specimen)
    planned.seatingEndS = planned.load.timeS
    loadOn(planned, specimen, random, course)
  }

/** Strokes of a hand pump take up the slack by themselves. */
const pumped: Loads = (planned, { strengthN, loadingS }, random) => {
  const { load, highs } = planned
  planned.loadingRateNPerS = pumpTo(load, random, strengthN, loadingS, (high) => highs.push(high))
}

const straight: LoadsOn = (planned, { strengthN }, _random, course) => {
  planned.loadingRateNPerS = driveTo(planned.load, strengthN, course)
}

/** One early drop, then on to the strength. */
const popIn: LoadsOn = (planned, specimen, random, course) => {
  const fromN = specimen.strengthN * random.between(0.35, 0.85)
  const slope = driveTo(planned.load, fromN, course)
  planned.popIns.push(slip(planned, specimen, course, fromN, fromN * random.between(0.06, 0.25)))
  straight(planned, specimen, random, { slope, slopeChange: course.slopeChange })
}

/** The bond slips again and again, each time near the load of before. */
const stickSlip: LoadsOn = (planned, specimen, random, course) => {
  const { load } = planned
  const { strengthN } = specimen
  const evenly = { slope: course.slope, slopeChange: 0 }
  const cycles = random.wholeBetween(3, 8)
  const firstN = strengthN * random.between(0.6, 0.95)
  planned.peakN = 0
  for (let cycle = 0; cycle < cycles; cycle++) {
    const fromN = firstN + ((strengthN - firstN) * cycle) / cycles + strengthN * random.between(-0.01, 0.01)
    driveTo(load, fromN, evenly)
    if (fromN > planned.peakN) {
      planned.peakN = fromN
      planned.peakTimeS = load.timeS
    }
    planned.slips.push(slip(planned, specimen, course, fromN, fromN * random.between(0.07, 0.2)))
  }
  const arrival = driveTo(load, strengthN * random.between(0.97, 1.02), evenly)
  planned.loadingRateNPerS = load.forceN < planned.peakN ? course.slope : arrival
}

/** The press is let back before anything breaks. */
const unloading: LoadsOn = (planned, { strengthN }, random, course) => {
  const { load } = planned
  const peakN = strengthN * random.between(0.2, 0.85)
  planned.loadingRateNPerS = driveTo(load, peakN, course)
  planned.peakN = peakN
  planned.peakTimeS = load.timeS
  planned.outcome = 'unloading'
  planned.highs.push({ timeS: load.timeS, forceN: peakN, fallN: peakN })
  const relaxing = random.between(0.01, 0.05)
  load.letGo(random.between(0.5, 4), peakN * (1 - relaxing), random.between(0.5, 2))
  const fallS = random.between(0.8, 2.5)
  load.letGo(9 * fallS, 0, fallS)
}

/** The press stands still for a while, or is let back a part of the way, and is then driven on. */
const held: LoadsOn = (planned, { strengthN }, random, course) => {
  const { load } = planned
  const slope = driveTo(load, strengthN * random.between(0.25, 0.85), course)
  const again = random.unit() < 0.4
  const high = again ? letDown(load, random) : holdLoad(load, random)
  planned.highs.push(high)
  const { timeS, forceN: fromN, fallN } = high
  if (again) planned.reloads.push({ timeS, lowestTimeS: load.timeS, fromN, lowestN: load.forceN })
  else planned.holds.push({ timeS, endTimeS: load.timeS, fromN, relaxedN: fallN })
  planned.loadingRateNPerS = driveTo(load, strengthN, { slope, slopeChange: again ? 0 : course.slopeChange })
}

/** The specimen gives way while the load all but stands still, until it fails. */
const plateau: LoadsOn = (planned, { strengthN }, random, course) => {
  const { load } = planned
  const creepN = strengthN * random.between(0, 0.015)
  const arrival = driveTo(load, strengthN - creepN, course)
  const { timeS } = load
  const plateauS = Math.max(random.between(2, 6), creepN / (0.1 * arrival))
  planned.loadingRateNPerS = creepN / plateauS
  load.drive(plateauS, planned.loadingRateNPerS)
  planned.plateau = { timeS, endTimeS: load.timeS }
}

function slip(
  { load, highs }: PlannedLoading,
  specimen: VirtualSpecimen,
  { slope }: Slope,
  fromN: number,
  dropN: number,
): LoadingPlan['popIns'][number] {
  const drop = { timeS: load.timeS, fromN, dropN }
  highs.push({ timeS: load.timeS, forceN: fromN, fallN: dropN })
  // Long enough for crack and ringing to die away, short enough that the drive cannot make good the drop meanwhile.
  const durationS = Math.min(12 * specimen.crackS + 4 * specimen.ringS, (0.3 * dropN) / slope)
  load.crack(durationS, fromN - dropN, crackOf(specimen, 0.5), slope)
  return drop
}

/** How each kind is loaded. What differs only in its failure, or in its faults, is driven straight to it. */
export const loadByKind: Readonly<Record<LoadingKind, Loads>> = {
  brittle: seated(straight),
  progressive: seated(straight),
  glitches: seated(straight),
  gaps: seated(straight),
  clipping: seated(straight),
  'hand-pumped': pumped,
  'pop-in': seated(popIn),
  'stick-slip': seated(stickSlip),
  unloading: seated(unloading),
  held: seated(held),
  plateau: seated(plateau),
}
