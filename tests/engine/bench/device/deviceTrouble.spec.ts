import { describe, expect, it } from 'vitest'
import type { DeviceFault } from '#contract/bench/bench.ts'
import { deviceTrouble } from '#engine/bench/device/deviceTrouble.ts'

const said = (...deviceFaults: DeviceFault[]) => deviceTrouble({ deviceFaults })?.message ?? null
const timed = 'The readings are timed by their arrival at this computer instead.'

describe('deviceTrouble', () => {
  it('is none where the numbers are good', () => {
    expect(said()).toBeNull()
  })

  it.each<[DeviceFault['kind'], RegExp]>([
    ['time-stands', /clock stands still/],
    ['time-falls', /clock keeps falling back/],
    ['sequence-stands', /sequence numbers do not change/],
    ['sequence-falls', /sequence numbers keep falling back/],
  ])('names what is wrong: %s', (kind, words) => {
    expect(said({ kind, pace: null })).toMatch(words)
  })

  it('says what is used instead, for a time and for numbers', () => {
    expect(said({ kind: 'time-stands', pace: null })).toContain(timed)
    expect(said({ kind: 'sequence-stands', pace: null })).toContain('by the time between readings')
    const both = said({ kind: 'sequence-stands', pace: null }, { kind: 'time-stands', pace: null })
    expect(both).toMatch(/do not change\. The amplifier's clock stands still.*instead\.$/)
    expect(both).toContain(timed)
  })

  it('names the unit where the pace is about a thousand off, and the pace in any case', () => {
    const pace = (kind: 'time-slow' | 'time-fast', value: number) => said({ kind, pace: value })!
    expect(pace('time-slow', 0.00098)).toMatch(/1,000 times too slow: it seems to send milliseconds/)
    expect(pace('time-slow', 1e-6)).toMatch(/1,000,000 times too slow\./)
    expect(pace('time-slow', 1 / 40)).toMatch(/40 times too slow\./)
    expect(pace('time-fast', 1013)).toMatch(/1,000 times too fast: it seems to send microseconds/)
    expect(pace('time-fast', 5000)).toMatch(/5,000 times too fast\./)
  })

  it('is told as what cannot be read, with what to do', () => {
    const trouble = deviceTrouble({ deviceFaults: [{ kind: 'time-falls', pace: null }] })
    expect(trouble?.code).toBe('not-readable')
    expect(trouble?.hint).toContain('mend the program of the amplifier')
  })
})
