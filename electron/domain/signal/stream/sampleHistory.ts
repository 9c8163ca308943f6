import { type ColumnRing, createColumnRing } from './columnRing.ts'

/** The newest samples of a stream, as long as a span of time needs; the first column is their time. */
export type SampleHistory = Pick<ColumnRing, 'length' | 'append' | 'clear' | 'copyFrom' | 'firstAtOrAfter'> & {
  /** Copies of the samples no older than `span` before the newest. */
  copyNewest(span: number): Float64Array<ArrayBuffer>[]
}

/** Most samples that are kept whatever their rate: 26 s at 10 kHz, 6 MB for three columns. */
export const mostHistorySamples = 262_144

/**
 * Keeps what is no older than `span` (in the unit of the times) before the newest sample, and `leastSamples` before it in
 * any case, up to 262,144 samples.
 * Throws RangeError for a span that is not above 0. Checked: tests/domain/signal/stream/sampleHistory.spec.ts.
 */
export function createSampleHistory(columns: number, span: number, leastSamples = 0): SampleHistory {
  if (!(span > 0)) throw new RangeError('createSampleHistory requires a span above 0')
  const ring = createColumnRing(columns, mostHistorySamples)
  return {
    ...ring,
    append(sources, from, to) {
      if (from >= to) return
      ring.append(sources, from, to)
      const newest = sources[0]![to - 1]!
      const earlier = ring.length() - 1 - leastSamples
      let old = 0
      while (old < earlier && newest - ring.at(0, old) > span) old += 1
      ring.forgetOldest(old)
    },
    copyNewest(newestSpan) {
      const newest = ring.length() - 1
      return ring.copyFrom(ring.firstAtOrAfter(ring.at(0, newest) - newestSpan))
    },
  }
}
