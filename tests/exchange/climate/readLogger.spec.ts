import { readFile } from 'node:fs/promises'
import { describe, expect, it } from 'vitest'
import { type ClimateMapping, climateMapping } from '#contract/findings/climate.ts'
import { readLogger } from '#exchange/climate/readLogger.ts'

const now = Date.parse('2027-01-01T00:00:00Z') / 1000
const mapping = (change: object = {}): ClimateMapping =>
  climateMapping.parse({
    ...{ time: { column: 'Time' }, timeZone: 'UTC', temperature: { column: 'Temp', unit: 'C' } },
    ...{ humidity: { column: 'RH' }, ...change },
  })
const read = (text: string, change: object = {}) =>
  readLogger('shed.csv', Buffer.from(text), mapping(change), now, () => {})
const iso = (timeS: number) => new Date(timeS * 1000).toISOString().slice(0, 16)

describe('a file of a logger', () => {
  it('is read row by row, and every other row is rejected with its sentence', async () => {
    const found = await read(
      [
        'Time,Temp,RH',
        '2026-03-01 00:00,4.5,80.1',
        '2026-03-01 00:10,4.4,',
        '2026-02-30 00:20,4.4,80',
        '2026-03-01 00:20,error,80',
        '2026-03-01 00:05,4.3,80',
        '2026-03-01 00:30,4.2,101',
        '2026-03-01 00:40,280 K,80',
        ',4.2,80',
        '',
        '2026-03-01 00:50,4.1,79.9',
      ].join('\n'),
    )
    expect([...found.readings.timeS].map(iso)).toEqual(['2026-03-01T00:00', '2026-03-01T00:10', '2026-03-01T00:50'])
    expect([...found.readings.row]).toEqual([2, 3, 11])
    expect([...found.readings.humidityPercent]).toEqual([80.1, Number.NaN, 79.9])
    expect(found.rejected.map(({ reason }) => reason)).toEqual([
      'Row 4, column A (Time): time: “2026-02-30” is a day that does not exist.',
      'Row 5, column B (Temp): temperature: “error” is not a number as people write one.',
      'Row 6: its time goes back behind that of row 3.',
      'Row 7, column C (RH): relative humidity: 101 % is not from 0 to 100 % relative humidity.',
      'Row 8, column B (Temp): temperature: “280 K” has an unknown unit; it may be °C or °F.',
      'Row 9, column A (Time): time: nothing stands there.',
    ])
    expect(found.rejectedCount).toBe(6)
  })

  it('may part its fields by semicolons and its decimals by commas, below a heading of several lines', async () => {
    const found = await read('Logger 7\nshed\nTime;Temp;RH\n1.3.2026 10:00;12,5;64,25\n1.3.2026 11:00;12;64\n', {
      ...{ headerRow: 3, timeZone: '+01:00' },
      time: { column: 'Time', dateFormat: 'D.M.YYYY' },
    })
    expect([...found.readings.timeS].map(iso)).toEqual(['2026-03-01T09:00', '2026-03-01T10:00'])
    expect([...found.readings.temperature]).toEqual([12.5, 12])
  })

  it('is read the same where it is longer than what is looked at first', async () => {
    const rows = Array.from({ length: 20_000 }, (_, i) => {
      const time = new Date(Date.UTC(2025, 0, 1) + i * 600_000).toISOString().slice(0, 16)
      return `${time};${(i % 300) / 10 - 5};${40 + (i % 500) / 10}`.replaceAll('.', ',')
    })
    const done: number[] = []
    const found = await readLogger(
      ...(['long.csv', Buffer.from(`Time;Temp;RH\n${rows.join('\n')}\n`), mapping(), now] as const),
      (one, total) => done.push(one / total),
    )
    expect(found.readings.timeS).toHaveLength(20_000)
    expect(found.readings.temperature[301]).toBe(-4.9)
    expect(found.rejectedCount).toBe(0)
    expect(done.length).toBeGreaterThan(1)
  })

  it('may be a sheet that another program wrote, with days and their share', async () => {
    const xlsx = await readFile(new URL('../../../samples/climate/sail-loft.xlsx', import.meta.url))
    const columns = { time: { column: 'Date and time' }, humidity: { column: 'RH (%)' } }
    const fahrenheit = mapping({ ...columns, temperature: { column: 'Temperature (°F)', unit: 'F' } })
    const found = await readLogger('sail-loft.xlsx', xlsx, fahrenheit, now, () => {})
    expect(found.rejectedCount).toBe(0)
    expect(found.readings.timeS).toHaveLength(24 * 7)
    expect([...found.readings.timeS.slice(0, 3)].map(iso)).toEqual([
      '2026-02-20T00:00',
      '2026-02-20T01:00',
      '2026-02-20T02:00',
    ])
  })

  it('is refused where the zone or a column is none', async () => {
    await expect(read('Time,Temp,RH\n', { timeZone: 'shed time' })).rejects.toThrow('"shed time" is no time zone.')
    await expect(read('Zeit,Temp,RH\n')).rejects.toThrow('No column is headed “Time”.')
  })

  it('stops where it is no longer wanted', async () => {
    const stop = new AbortController()
    stop.abort()
    const large = Buffer.from(`Time,Temp,RH\n${'2026-03-01 00:00,4.5,80\n'.repeat(20_000)}`)
    await expect(readLogger('shed.csv', large, mapping(), now, () => {}, stop.signal)).rejects.toThrow()
  })
})
