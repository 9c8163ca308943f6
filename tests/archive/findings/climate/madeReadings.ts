import type { NewReadings } from '#archive/findings/climate/storeReadings.ts'

/** Hourly readings from 1 January 2026 on, from a logger that hung in the loft. */
export function madeReadings(hours: readonly number[], change: Partial<NewReadings['said']> = {}): NewReadings {
  const first = Date.UTC(2026, 0, 1) / 1000
  return {
    store: { kind: 'exposure', name: 'loft' },
    readings: {
      timeS: Float64Array.from(hours, (hour) => first + 3600 * hour),
      temperature: Float64Array.from(hours, (hour) => (hour % 7) / 10 - 1),
      humidityPercent: Float64Array.from(hours, (hour) => (hour % 5 === 4 ? Number.NaN : 60 + (hour % 3))),
    },
    said: {
      ...{ recordedAt: '2026-06-01T08:00:00.000Z', by: 'bench', fileName: 'loft.csv', fileSha256: 'ab'.repeat(32) },
      mapping: { headerRow: 1, time: { column: 'A' }, timeZone: 'UTC', temperature: { column: 'B', unit: 'C' } },
      ...{ temperatureUnit: 'C', rejected: 0, simulated: false, ...change },
    },
  }
}

/** So many hours from one on. */
export const hoursFrom = (first: number, count: number) => Array.from({ length: count }, (_, i) => first + i)
