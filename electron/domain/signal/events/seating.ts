/** The loading is cut into so many stretches of equal time to judge its slope. */
const stretches = 40
/** The slope of a seated specimen is the median between these shares of the loading time. */
const seatedFrom = 0.2
const seatedTo = 0.6
/** Slack is taken up while the slope is below this share of it ... */
const seatedShare = 0.85
/** ... if it started below this one. */
const slackShare = 0.65
/** Shortest toe worth a word, share of the loading time. */
const shortestShare = 0.02
/** Slopes that differ by more than this share of their median (10th to 90th percentile) have no toe to speak of: a pumped load. */
const unsteadyShare = 1

/**
 * End of the seating (slack toe) of a loading, s, or null when it has none that can be told. The curve runs from onset
 * to peak.
 *
 *   slopes  mean force of 40 stretches of equal time, differences over time, median of three
 *   seated  from the first stretch whose slope reaches 0.85 of the median slope between 0.2 and 0.6 of the time
 *
 * Thresholds: common practice, no source. Checked: tests/domain/signal/events/seating.spec.ts on parabola and line.
 */
export function seatingEndS(curve: { timeS: Float64Array; force: Float64Array }): number | null {
  const { timeS, force } = curve
  const count = timeS.length
  if (count < stretches) return null
  const startS = timeS[0]!
  const lengthS = timeS[count - 1]! - startS
  if (!(lengthS > 0)) return null
  const sums = new Float64Array(stretches)
  const sumsT = new Float64Array(stretches)
  const counts = new Float64Array(stretches)
  for (let i = 0; i < count; i++) {
    const stretch = Math.min(stretches - 1, Math.floor(((timeS[i]! - startS) / lengthS) * stretches))
    sums[stretch]! += force[i]!
    sumsT[stretch]! += timeS[i]!
    counts[stretch]! += 1
  }
  const meansT: number[] = []
  const means: number[] = []
  for (let k = 0; k < stretches; k++)
    if (counts[k]! > 0) {
      meansT.push(sumsT[k]! / counts[k]!)
      means.push(sums[k]! / counts[k]!)
    }
  if (means.length < stretches / 2) return null
  const raw = means.slice(1).map((mean, k) => (mean - means[k]!) / (meansT[k + 1]! - meansT[k]!))
  const slopes = raw.map((_, k) => middleOf(raw[Math.max(0, k - 1)]!, raw[k]!, raw[Math.min(raw.length - 1, k + 1)]!))
  const seated = slopes
    .slice(Math.floor(seatedFrom * slopes.length), Math.ceil(seatedTo * slopes.length))
    .sort((a, b) => a - b)
  const median = seated[seated.length >> 1]!
  const spread = seated[Math.floor(0.9 * (seated.length - 1))]! - seated[Math.floor(0.1 * (seated.length - 1))]!
  if (!(median > 0) || spread > unsteadyShare * median) return null
  if (raw[0]! > slackShare * median) return null
  const first = slopes.findIndex((slope) => slope >= seatedShare * median)
  if (first < 1) return null
  const endS = meansT[first]!
  return endS - startS >= shortestShare * lengthS ? endS : null
}

const middleOf = (a: number, b: number, c: number) => Math.max(Math.min(a, b), Math.min(Math.max(a, b), c))
