import { type Extremes, findExtremes } from '#domain/numbers/extremes.ts'

/**
 * A curve with its levels: level 0 is the samples themselves, every further level keeps the lowest and the highest sample
 * of stretches twice as long as those of the level below it, as two indices in order of time. A level always holds the
 * highest sample of the curve and the lowest.
 */
export type MinMaxLevels = {
  timeS: Float64Array
  force: Float64Array
  /** levels[k - 1] holds level k. */
  levels: readonly Uint32Array[]
}

/** Samples in a stretch of level 1. Shorter stretches would hold as many points as there are samples. */
const firstStretch = 4
/** A level with fewer stretches than this is the last: no plot is narrower. */
const fewestStretches = 64

/** How many samples a stretch of the level holds. */
export function stretchOf(level: number): number {
  return level === 0 ? 1 : firstStretch * 2 ** (level - 1)
}

/** Builds all levels at once. Runs in O(n). Throws RangeError for arrays of unequal length. */
export function buildLevels(timeS: Float64Array, force: Float64Array): MinMaxLevels {
  const slices = levelsInSlices(timeS, force, Number.POSITIVE_INFINITY)
  let step = slices.next()
  while (!step.done) step = slices.next()
  return step.value
}

/**
 * Builds the levels and pauses after every `sliceSamples` samples or points, so that whoever draws meanwhile is not held up.
 * Throws RangeError for arrays of unequal length.
 */
export function* levelsInSlices(
  timeS: Float64Array,
  force: Float64Array,
  sliceSamples: number,
): Generator<void, MinMaxLevels> {
  if (timeS.length !== force.length) throw new RangeError('levelsInSlices requires as many times as forces')
  const levels: Uint32Array[] = []
  // Level 1 is made of the samples, every further one of the points of the level below it: two from each of two stretches.
  let points = { perStretch: firstStretch, count: force.length, sampleOf: (sample: number) => sample }
  for (let stretches = Math.ceil(force.length / firstStretch); stretches >= fewestStretches; ) {
    const level = new Uint32Array(2 * stretches)
    const perSlice = Math.max(Math.floor(sliceSamples / firstStretch), 1)
    for (let from = 0; from < stretches; from += perSlice) {
      const to = Math.min(from + perSlice, stretches)
      fillStretches(level, from, to, points, force)
      yield
    }
    levels.push(level)
    points = { perStretch: 4, count: level.length, sampleOf: (point) => level[point]! }
    stretches = Math.ceil(stretches / 2)
  }
  return { timeS, force, levels }
}

/** Fills in the lowest and the highest sample of stretches of so many points, of which `sampleOf` says which samples they are. */
function fillStretches(
  level: Uint32Array,
  from: number,
  to: number,
  points: { perStretch: number; count: number; sampleOf(point: number): number },
  force: Float64Array,
): void {
  const { perStretch, count, sampleOf } = points
  const found: Extremes = { first: 0, second: 0 }
  const forceOf = (point: number) => force[sampleOf(point)]!
  for (let stretch = from; stretch < to; stretch++) {
    const start = stretch * perStretch
    findExtremes(forceOf, start, Math.min(start + perStretch, count), found)
    level[2 * stretch] = sampleOf(found.first)
    level[2 * stretch + 1] = sampleOf(found.second)
  }
}

/** The coarsest level whose stretches still fit into a column of so many samples; 0 where no stretch does. */
export function levelFor({ levels }: Pick<MinMaxLevels, 'levels'>, samplesPerColumn: number): number {
  let level = 0
  while (level < levels.length && stretchOf(level + 1) <= samplesPerColumn) level++
  return level
}

/** Lowest and highest force among the samples from `from` up to but not including `to`, by the levels. Null for no sample. */
export function forceRange(curve: MinMaxLevels, from: number, to: number): { lowest: number; highest: number } | null {
  if (!(to > from)) return null
  const { force, levels } = curve
  let lowest = Number.POSITIVE_INFINITY
  let highest = Number.NEGATIVE_INFINITY
  const take = (sample: number) => {
    const value = force[sample]!
    if (value < lowest) lowest = value
    if (value > highest) highest = value
  }
  let at = from
  while (at < to) {
    // The longest stretch that begins here and ends in the range.
    let level = 0
    while (level < levels.length && at % stretchOf(level + 1) === 0 && at + stretchOf(level + 1) <= to) level++
    if (level === 0) take(at)
    else {
      const stretch = at / stretchOf(level)
      take(levels[level - 1]![2 * stretch]!)
      take(levels[level - 1]![2 * stretch + 1]!)
    }
    at += stretchOf(level)
  }
  return { lowest, highest }
}
