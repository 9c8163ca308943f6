import type { At, Mark } from '../drawing/mark.ts'

/** Pointwise median of curves with its quartiles over a rising grid; NaN where there is none. */
export type MedianLines = Record<'grid' | 'median' | 'lower' | 'upper', Float64Array>

/** Median and quartiles, what lies between the quartiles shaded. `at` puts a place of the axes on the figure. */
export function medianMarks(lines: MedianLines, at: (place: At) => At): Mark[] {
  const { grid, median, lower, upper } = lines
  const through = (values: Float64Array, from: number, to: number) =>
    Array.from(grid.subarray(from, to), (x, i) => at({ x, y: values[from + i]! }))
  return stretchesOf(median).flatMap(([from, to]): Mark[] => {
    const [high, low] = [through(upper, from, to), through(lower, from, to)]
    const around = [...high, ...low.toReversed()].map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`)
    return [
      { kind: 'path', ink: 'band', d: `M${around.join('L')}Z` },
      { kind: 'line', ink: 'quartile', through: high },
      { kind: 'line', ink: 'quartile', through: low },
      { kind: 'line', ink: 'mean', through: through(median, from, to) },
    ]
  })
}

/** Where values are known: from the first of a stretch to the one after its last. */
function stretchesOf(values: Float64Array): [number, number][] {
  const stretches: [number, number][] = []
  let from = 0
  for (let i = 0; i <= values.length; i++) {
    if (i < values.length && !Number.isNaN(values[i]!)) continue
    if (i > from) stretches.push([from, i])
    from = i + 1
  }
  return stretches
}
