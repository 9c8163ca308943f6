/** The loading is cut into so many stretches of equal time to judge its slope: as many as its noise allows. */
const stretchCounts = [40, 28, 20, 14, 10]
/** Noise may make up this share of the slope of a stretch (SD). */
const noiseShare = 0.1
/** The slope of a seated specimen is the median between these shares of the loading time. */
const seatedFrom = 0.2
const seatedTo = 0.6
/** Slack is taken up while the slope is below this share of it ... */
const seatedShare = 0.85
/** ... if it started below this one. */
const slackShare = 0.65
/** Slopes that differ by more than this share of their median (10th to 90th percentile) have no toe to speak of: a pumped load. */
const unsteadyShare = 1
/** Of normal values so many SDs lie between the 10th and the 90th percentile (R 2 * qnorm(0.9) = 2.563). */
const noiseSpread = 2.563

/**
 * End of the seating (slack toe) of a loading, s, or null when it has none that can be told. The curve runs from onset
 * to the peak, or to where the load first fell or was held; `noise` is the SD of its forces.
 *
 *   slopes  mean force of n stretches of equal time, differences over time, median of three
 *   n       40, 28, 20, 14 or 10: the most at which noise is below 0.1 of the median slope (SD)
 *   seated  from the first stretch whose slope reaches 0.85 of the median slope between 0.2 and 0.6 of the time
 *
 * Thresholds: common practice, no source. Checked: tests/domain/signal/events/seating.spec.ts on parabola and line,
 * tests/reference/courseCorpus.spec.ts.
 */
export function seatingEndS(curve: { timeS: Float64Array; force: Float64Array }, noise: number): number | null {
  for (const stretches of stretchCounts) {
    const slopes = slopesOf(curve, stretches)
    if (slopes === null) continue
    const { seatedSlope, spread } = seatedSlopeOf(slopes.smooth)
    const slopeNoise = slopes.perNoise * noise
    if (!(seatedSlope > 0) || spread > unsteadyShare * seatedSlope + noiseSpread * slopeNoise) return null
    if (slopeNoise <= noiseShare * seatedSlope) return slackUntilS(slopes, seatedSlope)
  }
  return null
}

type Slopes = {
  raw: readonly number[]
  smooth: readonly number[]
  /** Middle of the stretch that each slope starts from, s. */
  timeS: readonly number[]
  /** SD of a raw slope for each unit of noise of a force. */
  perNoise: number
}

function slopesOf({ timeS, force }: { timeS: Float64Array; force: Float64Array }, stretches: number): Slopes | null {
  const count = timeS.length
  if (count < stretches) return null
  const startS = timeS[0]!
  const lengthS = timeS[count - 1]! - startS
  if (!(lengthS > 0)) return null
  const sums = new Float64Array(stretches)
  const sumsT = new Float64Array(stretches)
  const counts = new Float64Array(stretches)
  for (const [i, atS] of timeS.entries()) {
    const stretch = Math.min(stretches - 1, Math.floor(((atS - startS) / lengthS) * stretches))
    sums[stretch]! += force[i]!
    sumsT[stretch]! += atS
    counts[stretch]! += 1
  }
  const meansT: number[] = []
  const means: number[] = []
  for (const [k, inside] of counts.entries())
    if (inside > 0) {
      meansT.push(sumsT[k]! / inside)
      means.push(sums[k]! / inside)
    }
  if (means.length < stretches / 2) return null
  const raw = means.slice(1).map((mean, k) => (mean - means[k]!) / (meansT[k + 1]! - meansT[k]!))
  const smooth = raw.map((slope, k) => middleOf(raw[k - 1] ?? slope, slope, raw[k + 1] ?? slope))
  const perNoise = (Math.sqrt((2 * stretches) / count) * stretches) / lengthS
  return { raw, smooth, timeS: meansT, perNoise }
}

function seatedSlopeOf(slopes: readonly number[]): { seatedSlope: number; spread: number } {
  const seated = slopes
    .slice(Math.floor(seatedFrom * slopes.length), Math.ceil(seatedTo * slopes.length))
    .sort((a, b) => a - b)
  const seatedSlope = seated[seated.length >> 1]!
  const spread = seated[Math.floor(0.9 * (seated.length - 1))]! - seated[Math.floor(0.1 * (seated.length - 1))]!
  return { seatedSlope, spread }
}

function slackUntilS({ raw, smooth, timeS }: Slopes, seatedSlope: number): number | null {
  if (raw[0]! > slackShare * seatedSlope) return null
  const first = smooth.findIndex((slope) => slope >= seatedShare * seatedSlope)
  return timeS[first] ?? null
}

const middleOf = (a: number, b: number, c: number) => Math.max(Math.min(a, b), Math.min(Math.max(a, b), c))
