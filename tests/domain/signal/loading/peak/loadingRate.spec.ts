import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { slopeBeforePeak } from '#domain/signal/loading/peak/loadingRate.ts'
import { createRecentSamples } from '#domain/signal/stream/recentSamples.ts'
import { takeOne } from '#tests/fakes/streams/cutStream.ts'

describe('the loading rate before a peak', () => {
  it('is known within four of its 2 % on a slow noisy ramp and follows the stroke of a pump', () => {
    for (let seed = 1; seed <= 50; seed++) {
      const random = createRandom(seed)
      const slow = createRecentSamples()
      for (let i = 0; i < 800; i++) takeOne(slow, i / 80, (100 * i) / 80 + random.normal())
      expect(slopeBeforePeak(slow, 799, 1)! / 100).toBeGreaterThan(0.92)
      expect(slopeBeforePeak(slow, 799, 1)! / 100).toBeLessThan(1.08)
      const pumped = createRecentSamples()
      // Rest until 0.3 s before the peak, then 2000 N/s.
      for (let i = 0; i < 800; i++) takeOne(pumped, i / 400, 2000 * Math.max(0, i / 400 - 1.7) + random.normal())
      expect(slopeBeforePeak(pumped, 799, 1)! / 2000).toBeGreaterThan(0.95)
    }
  })

  it('needs three samples', () => {
    const recent = createRecentSamples()
    takeOne(recent, 0, 0)
    takeOne(recent, 1, 5)
    expect(slopeBeforePeak(recent, 1, 0)).toBeNull()
  })
})
