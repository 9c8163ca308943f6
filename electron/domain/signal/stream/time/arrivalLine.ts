/** The straight line through the arrivals that waited least: when reading n would arrive without waiting. */
export type ArrivalLine = {
  /** Starts from the mean interval so far, s, at reading n. */
  begin(intervalS: number, n: number, arrivalS: number): void
  /** Starts anew at reading n, with the interval known so far. */
  restart(n: number, arrivalS: number): void
  /** Reading n has arrived. */
  see(n: number, arrivalS: number): void
  /** The line at reading n, s. */
  at(n: number): number
  /** Time from one reading to the next, s; NaN before it has begun. */
  intervalS(): number
}

/** Of each window this long, s, only the arrival that waited least counts: waiting makes readings late, never early. */
const windowS = 1
const keptWindows = 30
/** Fewer points do not change the interval. */
const leastPoints = 3

/**
 *   A = a + b n      by least squares through the earliest arrival (least A − b n) of each of the last 30 windows of 1 s
 *
 * Checked: tests/domain/signal/stream/time/arrivalLine.spec.ts.
 */
export function createArrivalLine(): ArrivalLine {
  const points = { n: new Float64Array(keptWindows), a: new Float64Array(keptWindows) }
  const line = { b: Number.NaN, n: Number.NaN, a: Number.NaN }
  const best = { n: Number.NaN, a: Number.NaN, windowStartS: Number.NaN }
  /** Windows since it began. */
  let windows = 0

  function restart(n: number, arrivalS: number): void {
    windows = 0
    line.n = n
    line.a = arrivalS
    best.windowStartS = arrivalS
    best.n = n
    best.a = Number.POSITIVE_INFINITY
  }

  function keepBest(): void {
    points.n[windows % keptWindows] = best.n
    points.a[windows % keptWindows] = best.a
    windows += 1
  }

  function fit(): void {
    const count = Math.min(keptWindows, windows)
    let meanN = 0
    let meanA = 0
    for (let i = 0; i < count; i++) {
      meanN += points.n[i]! / count
      meanA += points.a[i]! / count
    }
    line.n = meanN
    line.a = meanA
    if (count < leastPoints) return
    let snn = 0
    let sna = 0
    for (let i = 0; i < count; i++) {
      const n = points.n[i]! - meanN
      snn += n * n
      sna += n * (points.a[i]! - meanA)
    }
    const b = sna / snn
    if (b > 0) line.b = b
  }

  return {
    begin(intervalS, n, arrivalS) {
      line.b = intervalS
      restart(n, arrivalS)
    },
    restart,
    see(n, arrivalS) {
      if (arrivalS - line.b * n < best.a - line.b * best.n) {
        best.a = arrivalS
        best.n = n
      }
      if (arrivalS - best.windowStartS < windowS) return
      keepBest()
      best.windowStartS = arrivalS
      best.a = Number.POSITIVE_INFINITY
      fit()
    },
    at: (n) => line.a + line.b * (n - line.n),
    intervalS: () => line.b,
  }
}
