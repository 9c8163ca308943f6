import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { createOddBench } from './oddBench.ts'
import { faultsOf, hearDevices, oddDevices } from './oddDevices.ts'

describe('a share of the odd devices', () => {
  let bench: Awaited<ReturnType<typeof createOddBench>>
  let remove = async () => {}
  beforeAll(async () => {
    const kept = await temporaryArchive()
    remove = kept.remove
    bench = await createOddBench(kept.archive)
  })
  afterAll(async () => {
    await bench.close()
    await remove()
  })

  it('is more than seventy-five, each with a name of its own', () => {
    expect(new Set(oddDevices.map(({ name }) => name)).size).toBe(oddDevices.length)
    expect(oddDevices.length).toBeGreaterThanOrEqual(75)
  })

  it.each([
    'sound: checked',
    'checked: time stuck',
    'checked: ms in place of us',
    'checked: sequence stuck',
    'time falls from 4000000000',
    'checked: sequence and time stuck',
    'sequence of 8 bits',
    'restart: silent for half a second',
    'restart: its first two hundred lines are lost',
    'constant 8388607, codes not known',
    'alternating just below full scale',
    'a sine of 200 N at 1 Hz',
    'one early line in another unit',
    'another unit in the midst of a loading',
    'a spike of 73 kN at rest',
    'a spike of −73 kN at rest',
    'an overload of 26 kN',
    'an amplifier that ends at 348213',
  ])('leads to what is expected: %s', async (wanted) => {
    const device = oddDevices.find(({ name }) => name === wanted)!
    expect(faultsOf(device, await bench.hear(device))).toEqual([])
  })

  it('is seen to break where something else is said or captured', async () => {
    const [sound] = oddDevices
    const stuck = oddDevices.find(({ name }) => name.startsWith('time stuck'))!
    const { broke } = await hearDevices([
      { ...sound!, expected: { ...sound!.expected, peaksN: [], zero: false } },
      { ...stuck, expected: { ...stuck.expected, said: [] } },
    ])
    expect(broke[0]).toMatch(/a zero was taken; breaks of [\d.]+ N$/)
    expect(broke[1]).toMatch(/said: The amplifier's clock stands still/)
  })
})
