import type { Comparison } from '#contract/breaks/comparison.ts'
import { quantileOfSorted } from '../../numbers/quantile.ts'
import { leastReaching } from './comparisonGrid.ts'

/** Median and quartiles of several curves at each place of a grid, and how many curves reach there. */
export type MedianBand = Pick<Comparison, 'lower' | 'median' | 'upper' | 'curvesAt'>

/** A band that nothing has been worked out of yet. */
export function emptyBand(places: number): MedianBand {
  const unknown = () => new Float64Array(places).fill(Number.NaN)
  return { lower: unknown(), median: unknown(), upper: unknown(), curvesAt: new Float64Array(places) }
}

/**
 * Works out the places [from, to) of a band, so that a long one can be made in parts.
 *
 *   lower, median, upper   quantiles 0.25, 0.5 and 0.75 of the curves that reach the place (Hyndman and Fan, definition 7)
 *
 * NaN in a curve: it does not reach there. NaN in the band where fewer than three curves or than half of them reach; the count
 * is given there too.
 * Checked: tests/domain/signal/compare/medianBand.spec.ts against numpy.nanquantile.
 */
export function fillBand(band: MedianBand, curves: readonly Float64Array[], from: number, to: number): void {
  const reached = new Float64Array(curves.length)
  const least = leastReaching(curves.length)
  for (let place = from; place < to; place++) {
    let count = 0
    for (const curve of curves) {
      const value = curve[place]!
      if (!Number.isNaN(value)) reached[count++] = value
    }
    band.curvesAt[place] = count
    if (count < least) continue
    const sorted = reached.subarray(0, count).sort()
    band.lower[place] = quantileOfSorted(sorted, 0.25)
    band.median[place] = quantileOfSorted(sorted, 0.5)
    band.upper[place] = quantileOfSorted(sorted, 0.75)
  }
}
