import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { fixedOffsetS, zoneClock } from '#domain/climate/zoneClock.ts'

// By Python's zoneinfo: zonesByPython.py beside it.
const zones: [string, number, number[]][] = JSON.parse(readFileSync(new URL('zones.json', import.meta.url), 'utf8'))

describe('the clock of a zone', () => {
  it.each([...new Set(zones.map(([zone]) => zone))])('of %s shows a time when zoneinfo says so', (zone) => {
    const clock = zoneClock(zone)!
    const ours = zones.filter(([one]) => one === zone)
    expect(ours.map(([, shownS]) => clock(shownS))).toEqual(ours.map(([, , instants]) => instants))
    expect(ours.length).toBeGreaterThan(50)
  })

  it('knows offsets, and no zone that there is not', () => {
    expect(zoneClock('+01:30')!(5400)).toEqual([0])
    expect(zoneClock('UTC-03:00')!(0)).toEqual([10_800])
    expect(zoneClock('UTC')!(77)).toEqual([77])
    expect(zoneClock('Saltmarsh/Loft')).toBeNull()
  })

  it('reads no offset where none is', () => {
    expect(['Z', '+0100', '+1:00', '+15:00', '+01:60', 'noon'].map(fixedOffsetS)).toEqual([
      0,
      3600,
      null,
      null,
      null,
      null,
    ])
  })
})
