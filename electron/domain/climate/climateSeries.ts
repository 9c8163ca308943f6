/** Readings of loggers in the order of their times: seconds since 1970 (UTC), °C, percent; NaN: no humidity was read. */
export type ClimateSeries = {
  readonly timeS: Float64Array
  readonly temperatureC: Float64Array
  readonly humidityPercent: Float64Array
}

export type TimeSpan = { readonly fromS: number; readonly toS: number }

/** So many intervals show how often a logger wrote at the time. */
const lookedIntervals = 128
/** No reading for so many times the usual interval is a gap (our choice, no source). */
const gapIntervals = 3

/**
 * How long each reading stands, in seconds: until the next one, and before a gap for the usual interval; the last one for the
 * usual interval too. The usual interval is the median of those about it, the longer one where a logger was set otherwise. A lone
 * reading stands for nothing. Throws RangeError where a time does not rise. Checked: tests/domain/climate/climateSeries.spec.ts.
 */
export function standingTimes(timeS: Float64Array): { standingS: Float64Array; gaps: TimeSpan[] } {
  const standingS = new Float64Array(timeS.length)
  const gaps: TimeSpan[] = []
  const intervals = timeS.length - 1
  const medians = usualIntervals(timeS)
  let usual = 0
  for (let i = 0; i < intervals; i++) {
    if (i % lookedIntervals === 0) {
      const part = i / lookedIntervals
      usual = Math.max(medians[part - 1] ?? 0, medians[part]!, medians[part + 1] ?? 0)
    }
    const interval = timeS[i + 1]! - timeS[i]!
    if (!(interval > 0)) throw new RangeError('standingTimes requires times that rise')
    const isGap = interval > gapIntervals * usual
    if (isGap) gaps.push({ fromS: timeS[i]!, toS: timeS[i + 1]! })
    standingS[i] = isGap ? usual : interval
  }
  if (intervals > 0) standingS[intervals] = usual
  return { standingS, gaps }
}

/** Medians of so many intervals after each other; the last part looks back to be as long as the others. */
function usualIntervals(timeS: Float64Array): number[] {
  const intervals = Math.max(timeS.length - 1, 0)
  const looked = new Float64Array(Math.min(lookedIntervals, intervals))
  return Array.from({ length: Math.ceil(intervals / lookedIntervals) }, (_, part) => {
    const from = Math.min(part * lookedIntervals, intervals - looked.length)
    for (let i = 0; i < looked.length; i++) looked[i] = timeS[from + i + 1]! - timeS[from + i]!
    return looked.toSorted()[looked.length >> 1]!
  })
}
