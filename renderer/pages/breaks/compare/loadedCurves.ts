import type { BreakRecord } from '#contract/breaks/break.ts'
import type { Client } from '#contract/wire/carrier.ts'
import { levelsInSlices, type MinMaxLevels } from '../../../plots/minMaxLevels.ts'

export type LoadedCurve = { record: BreakRecord; levels: MinMaxLevels; samples: number }

/** All points of all curves together, so that many long curves do not fill the memory: 16 bytes each. */
const mostPoints = 10_000_000
const mostPointsOfOne = 200_000
/** Built in one go; about a millisecond. */
const sliceSamples = 60_000

/** To how many points a curve is thinned on its way when it comes with so many others. */
export function pointsEach(curves: number): number {
  return Math.min(Math.floor(mostPoints / Math.max(curves, 1)), mostPointsOfOne)
}

/** Fetches a break with its curve and builds the levels, giving way to whatever is drawn meanwhile. */
export async function loadCurve(client: Client, breakId: number, maxPoints: number): Promise<LoadedCurve> {
  const record = await client.call('breaks.get', { breakId })
  const curve = await client.call('breaks.curve', { breakId, maxPoints })
  return { record, levels: await buildGivingWay(curve.timeS, curve.force), samples: curve.samples }
}

/** The same curve, with what its break counts as now. */
export async function withNewRecord(client: Client, loaded: LoadedCurve): Promise<LoadedCurve> {
  const { breakId } = loaded.record.summary
  return { ...loaded, record: await client.call('breaks.get', { breakId }) }
}

/** Builds the levels of a curve slice by slice, with a turn for others between. */
export async function buildGivingWay(timeS: Float64Array, force: Float64Array): Promise<MinMaxLevels> {
  const slices = levelsInSlices(timeS, force, sliceSamples)
  let step = slices.next()
  while (!step.done) {
    await new Promise((resolve) => setTimeout(resolve))
    step = slices.next()
  }
  return step.value
}
