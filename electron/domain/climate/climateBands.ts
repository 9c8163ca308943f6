/** One quantity over time: of each stretch its time (the middle of its readings), the lowest, the mean over time and the highest value. */
export type TimeBand = {
  readonly timeS: Float64Array<ArrayBuffer>
  readonly min: Float64Array<ArrayBuffer>
  readonly mean: Float64Array<ArrayBuffer>
  readonly max: Float64Array<ArrayBuffer>
}

/**
 * A quantity in at most so many stretches of equal length, for a figure; a stretch without a reading is left out, as is a reading
 * that is NaN. Where no more values than stretches are there, each stands for itself. Null where there is none.
 * Checked: tests/domain/climate/climateBands.spec.ts.
 */
export function thinnedBand(
  timeS: Float64Array,
  values: Float64Array,
  standingS: Float64Array,
  stretches: number,
): TimeBand | null {
  const from = timeS[0] ?? 0
  const width = ((timeS.at(-1) ?? 0) - from) / stretches
  const stretchOf = (i: number) =>
    timeS.length <= stretches ? i : Math.min(Math.floor((timeS[i]! - from) / width), stretches - 1)
  const rows: { fromS: number; toS: number; min: number; sum: number; weight: number; max: number }[] = []
  let current = -1
  for (let i = 0; i < timeS.length; i++) {
    const value = values[i]!
    if (Number.isNaN(value)) continue
    const stretch = stretchOf(i)
    const at = timeS[i]!
    // A lone reading stands for nothing, and is its own mean all the same
    const weight = standingS[i]! || 1
    const row = rows.at(-1)
    if (row === undefined || stretch !== current) {
      rows.push({ fromS: at, toS: at, min: value, sum: value * weight, weight, max: value })
      current = stretch
      continue
    }
    row.toS = at
    row.sum += value * weight
    row.weight += weight
    if (value < row.min) row.min = value
    if (value > row.max) row.max = value
  }
  if (rows.length === 0) return null
  return {
    timeS: Float64Array.from(rows, ({ fromS, toS }) => (fromS + toS) / 2),
    min: Float64Array.from(rows, ({ min }) => min),
    mean: Float64Array.from(rows, ({ sum, weight }) => sum / weight),
    max: Float64Array.from(rows, ({ max }) => max),
  }
}
