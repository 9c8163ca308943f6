import type { LoadedCurve } from '#domain/signal/events/loadedCurve.ts'

/** A loaded curve of a force that is given for every time, sampled every `intervalS` from onset to `endS`; single samples are its means. */
export function madeCurve(
  forceAt: (timeS: number) => number,
  given: { intervalS: number; endS: number } & Partial<LoadedCurve>,
): LoadedCurve {
  const { intervalS, endS } = given
  const timeS = Float64Array.from({ length: Math.floor(endS / intervalS + 1e-9) + 1 }, (_, i) => i * intervalS)
  const force = timeS.map(forceAt)
  let peakAt = 0
  for (let i = 0; i < force.length; i++) if (force[i]! > force[peakAt]!) peakAt = i
  const { endS: _endS, ...rest } = given
  return {
    timeS,
    force,
    samplesPerMean: 1,
    zero: 0,
    noise: 0,
    onsetS: 0,
    peak: force[peakAt]!,
    peakS: timeS[peakAt]!,
    breakS: null,
    afterBreak: null,
    fallS: null,
    clipped: false,
    ...rest,
  }
}

/** A force whose points are joined by straight lines. */
export function lines(...points: readonly (readonly [timeS: number, force: number])[]): (timeS: number) => number {
  return (timeS) => {
    const next = points.findIndex(([at]) => at >= timeS)
    if (next < 0) return points.at(-1)![1]
    if (next === 0) return points[0]![1]
    const [fromS, from] = points[next - 1]!
    const [toS, to] = points[next]!
    return from + ((to - from) * (timeS - fromS)) / (toS - fromS)
  }
}
