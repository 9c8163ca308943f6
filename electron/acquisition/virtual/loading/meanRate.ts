import { forceAt, type LoadSegment } from './loadSegment.ts'

/** Slope of the straight line from where a loading first reaches 10 % of its peak to where it first reaches 90 %, N/s. */
export function meanRate(segments: readonly LoadSegment[], peakN: number): number {
  const fromS = firstReachedS(segments, 0.1 * peakN)
  return (0.8 * peakN) / (firstReachedS(segments, 0.9 * peakN) - fromS)
}

const looksPerSegment = 500

/** When a load first reaches a force that it does reach: looked for in steps, then by halving the interval. */
function firstReachedS(segments: readonly LoadSegment[], forceN: number): number {
  for (const segment of segments)
    for (let look = 1; look <= looksPerSegment; look++) {
      const stepS = segment.durationS / looksPerSegment
      if (forceAt(segment, look * stepS) < forceN) continue
      let low = (look - 1) * stepS
      let high = look * stepS
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2
        if (forceAt(segment, middle) < forceN) low = middle
        else high = middle
      }
      return segment.startS + high
    }
  throw new RangeError('firstReachedS requires a force that the load reaches')
}
