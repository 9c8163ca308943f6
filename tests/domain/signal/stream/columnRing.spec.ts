import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createColumnRing } from '#domain/signal/stream/columnRing.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

const counted = Float64Array.from({ length: 3000 }, (_, i) => i)
const halves = counted.map((i) => i / 2)

describe('a ring of columns', () => {
  it.each([
    [1, 300],
    [9, 7],
    [700, 300],
    [3000, 1000],
  ])('keeps the newest rows in order, blocks up to %i in a ring of %i', (longest, most) => {
    const ring = createColumnRing(2, most)
    for (const [from, to] of cutStream(createRandom(longest), 3000, longest)) {
      ring.append([counted, halves], from, to)
      const kept = Math.min(to, most)
      expect(ring.length()).toBe(kept)
      expect([ring.at(0, 0), ring.at(1, kept - 1)]).toEqual([to - kept, (to - 1) / 2])
    }
    expect(ring.copyFrom(0)).toEqual([counted.slice(3000 - most), halves.slice(3000 - most)])
    expect(ring.copyFrom(most)).toEqual([new Float64Array(0), new Float64Array(0)])
  })

  it('finds the first row at or after a value, also when it has gone round', () => {
    const ring = createColumnRing(1, 10)
    ring.append([counted], 0, 26)
    expect([15.5, 16, 20.5, 25, 26].map(ring.firstAtOrAfter)).toEqual([0, 0, 5, 9, 10])
  })

  it('forgets the oldest, and everything', () => {
    const ring = createColumnRing(1, 10)
    ring.append([counted], 0, 16)
    ring.forgetOldest(4)
    ring.append([counted], 16, 18)
    expect([...ring.copyFrom(0)[0]!]).toEqual([10, 11, 12, 13, 14, 15, 16, 17])
    ring.clear()
    ring.append([counted], 5, 7)
    expect([...ring.copyFrom(0)[0]!]).toEqual([5, 6])
  })

  it('may hold a single row, and one that is thrown out by the next', () => {
    const ring = createColumnRing(1, 1)
    for (let row = 0; row < 3; row++) ring.append([counted], row, row + 1)
    expect([ring.length(), ring.at(0, 0), ring.copyFrom(0)[0]!.length]).toEqual([1, 2, 1])
  })

  it('stays in order when it grows while it has gone round', () => {
    const ring = createColumnRing(1, 2000)
    ring.append([counted], 0, 250)
    ring.forgetOldest(200)
    ring.append([counted], 250, 440)
    ring.append([counted], 440, 900)
    ring.forgetOldest(100)
    ring.append([counted], 900, 2400)
    expect(ring.copyFrom(0)).toEqual([counted.slice(400, 2400)])
  })

  it('refuses to be made of nothing', () => {
    expect(() => createColumnRing(0, 5)).toThrow(RangeError)
    expect(() => createColumnRing(1, 0)).toThrow(RangeError)
  })
})
