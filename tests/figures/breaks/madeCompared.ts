import type { ComparedCurves, OverlaidCurve } from '#figures/breaks/comparedCurvesFigure.ts'

/** A curve that rises from 0 at its second to `peak` at `peakS`, and falls at once. */
export function madeOverlaid(
  name: string,
  peak: number,
  peakS: number,
  change: Partial<OverlaidCurve> = {},
): OverlaidCurve {
  const timeS = Float64Array.from({ length: 200 }, (_, i) => (i / 199) * (peakS + 1))
  const force = timeS.map((time) => (time < 1 || time > peakS ? 0 : (peak * (time - 1)) / (peakS - 1)))
  return {
    ...{
      name,
      curve: { timeS, force },
      gaps: [],
      originS: 1,
      timeUnit: 1,
      forceUnit: 1,
      setAside: false,
      outlying: null,
    },
    isForemost: false,
    ...change,
  }
}

/** So many curves under names like `name`, the second set aside, the third outlying and the fourth chosen, where they are. */
export function madeCompared(name: string, count: number): ComparedCurves {
  const curves = Array.from({ length: count }, (_, i) =>
    madeOverlaid(`${name} ${i + 1}`, 3000 + 40 * i, 10 + (i % 5) / 4, {
      setAside: i === 1,
      outlying: i === 2 ? { at: 5, words: `540 N below the median ${name}` } : null,
      isForemost: i === 3,
    }),
  )
  const grid = Float64Array.from({ length: 90 }, (_, i) => i / 10)
  const median = grid.map((at) => 340 * at)
  return {
    title: `${count} load curves over each other: ${name}`,
    curves,
    median: count < 3 ? null : { grid, median, lower: median.map((v) => 0.9 * v), upper: median.map((v) => 1.1 * v) },
    axes: { x: 'time from the start of loading, s', y: 'load, N' },
    factor: 1,
    heightEm: 26,
  }
}
