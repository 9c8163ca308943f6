import { expect, it } from 'vitest'
import { climateReadings } from '#archive/findings/climate/climateLists.ts'
import { type NewReadings, storeReadings } from '#archive/findings/climate/storeReadings.ts'
import { climateLimits } from '#contract/findings/climate.ts'
import { storeClimate } from '#domain/climate/storeClimate.ts'
import { demoLoggerFile, hangDemoLogger } from '#engine/keeping/demo/demoClimate.ts'
import { archiveInMemory } from '../../../archive/storedStudy.ts'

const never = new AbortController().signal

it('hangs an invented logger in the loft once, with a year of frost, swings and a gap', async () => {
  const database = archiveInMemory()
  const kept = {
    storeReadings: async (_tell: unknown, _signal: unknown, made: NewReadings) =>
      storeReadings(
        database,
        () => {},
        () => false,
        made,
      ),
  }
  await hangDemoLogger(kept, '2026-01-10', '2027-01-20', never)
  await hangDemoLogger(kept, '2026-01-10', '2027-01-20', never)
  const read = climateReadings(database, { kind: 'exposure', name: 'loft' })
  expect(read).toMatchObject({ imports: [1], simulated: true })
  const climate = storeClimate(read.series, climateLimits.parse({}))!
  expect(climate.gapCount).toBe(1)
  expect(climate.whole.freezeThawCycles).toBeGreaterThan(5)
  expect(climate.whole.moistureSwings[0]!.count).toBeGreaterThan(20)
})

it('writes a small file', () => {
  expect(demoLoggerFile('2026-01-10', '2027-01-20').length).toBeLessThan(100_000)
})
