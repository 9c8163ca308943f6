import { describe, expect, it } from 'vitest'
import { faultsOf, hearDevices, oddDevices } from './oddDevices.ts'

describe('a share of the odd devices', () => {
  it('is more than seventy-five, each with a name of its own', () => {
    expect(new Set(oddDevices.map(({ name }) => name)).size).toBe(oddDevices.length)
    expect(oddDevices.length).toBeGreaterThanOrEqual(75)
  })

  it('leads to what is expected of each', async () => {
    const share = oddDevices.filter((_, i) => i % 9 === 4)
    expect(await hearDevices(share)).toEqual({ tried: share.length, held: share.length, broke: [] })
  }, 120_000)

  it('is seen to break where something else is said or captured', async () => {
    const [sound] = oddDevices
    const stuck = oddDevices.find(({ name }) => name.startsWith('time stuck'))!
    const { broke } = await hearDevices([
      { ...sound!, expected: { ...sound!.expected, peaksN: [], zero: false } },
      { ...stuck, expected: { ...stuck.expected, said: [] } },
    ])
    expect(broke[0]).toMatch(/a zero was taken; breaks of [\d.]+ N$/)
    expect(broke[1]).toMatch(/said: The device's clock stands still/)
    expect(faultsOf).toBeTypeOf('function')
  }, 120_000)
})
