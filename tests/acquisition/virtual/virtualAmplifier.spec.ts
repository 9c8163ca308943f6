import { describe, expect, it } from 'vitest'
import { createVirtualAmplifier } from '#acquisition/virtual/virtualAmplifier.ts'

describe('virtual amplifier', () => {
  it('sends the same bytes however its time is cut', () => {
    const options = { scenario: 'gaps', rateHz: 200, seed: 3, breaks: 2 } as const
    const whole = createVirtualAmplifier(options)
    const all = whole.bytesUntil(Number.POSITIVE_INFINITY)
    const cut = createVirtualAmplifier(options)
    const parts: Uint8Array[] = []
    for (let timeS = 0; !cut.over(); timeS += 0.37) parts.push(cut.bytesUntil(timeS))
    expect(Buffer.concat(parts).equals(all)).toBe(true)
    expect(cut.bench.truths).toEqual(whole.bench.truths)
    expect(cut.lines().sent).toBe(whole.bench.counts().sent)
  })

  it('gives no sample of the moment asked for or later', () => {
    const amplifier = createVirtualAmplifier({ scenario: 'idle', rateHz: 10, seed: 1 })
    amplifier.bytesUntil(1)
    expect(amplifier.lines().sent).toBe(10)
    expect(amplifier.givenUntilS()).toBe(1)
    amplifier.bytesUntil(100, 5)
    expect(amplifier.lines().sent).toBe(15)
  })
})
