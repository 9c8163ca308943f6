import { readFile } from 'node:fs/promises'
import { describe, expect, it } from 'vitest'
import { climateMapping } from '#contract/findings/climate.ts'
import { proposeLogger } from '#exchange/climate/proposeLogger.ts'

const unsaid = { sheet: null, headerRow: null, earlier: [] }
const propose = (text: string, said: Partial<Parameters<typeof proposeLogger>[2]> = {}) =>
  proposeLogger('shed.csv', Buffer.from(text), { ...unsaid, ...said })
const sample = (name: string) => readFile(new URL(`../../../samples/climate/${name}`, import.meta.url))

describe('what the headings of a logger suggest', () => {
  it('is the whole mapping of a sample but for the time zone', async () => {
    expect(await proposeLogger('sail-loft.csv', await sample('sail-loft.csv'), unsaid)).toMatchObject({
      ...{ headerRow: 2, time: 'Datum', timeOfDay: 'Uhrzeit', dateFormat: 'D.M.YYYY', decimal: ',' },
      ...{ temperature: 'Temperatur (°C)', temperatureUnit: 'C', humidity: 'Feuchte (% rF)', kept: null },
    })
  })

  it('needs no form of days where a sheet knows them', async () => {
    expect(await proposeLogger('sail-loft.xlsx', await sample('sail-loft.xlsx'), unsaid)).toMatchObject({
      ...{ sheets: ['Readings'], time: 'Date and time', timeOfDay: null, dateFormat: null, dateFormats: [] },
      ...{ temperature: 'Temperature (°F)', temperatureUnit: 'F', humidity: 'RH (%)' },
    })
  })

  it('leaves open what could be read in two ways', async () => {
    const found = await propose('Time,Temp,RH\n01/02/2026 10:00,5,60\n')
    expect(found).toMatchObject({ dateFormat: null, temperatureUnit: null, temperature: 'Temp' })
    expect(found.dateFormats).toEqual(['D/M/YYYY', 'M/D/YYYY'])
  })

  it('takes the form in which a logger wrote day by day, whatever a few odd rows say', async () => {
    const days = ['01/02', '02/02', '03/02', '30/02', '04/02', '01/02', '05/02']
    const found = await propose(`Time,Temp\n${days.map((day) => `${day}/2026 10:00,5\n`).join('')}`)
    expect(found).toMatchObject({ dateFormat: 'D/M/YYYY', dateFormats: ['D/M/YYYY', 'M/D/YYYY'] })
    const short = await propose('Time,Temp\n13.02.26 10:00,5\n14.02.26 10:00,5\n')
    expect(short).toMatchObject({ dateFormat: 'D.M.YY' })
  })

  it('takes no dew point for the temperature', async () => {
    const found = await propose('Date/Time,Dew point (°C),Temperature (°C),Humidity\n2026-01-01 10:00,1,5,60\n')
    expect(found).toMatchObject({ temperature: 'Temperature (°C)', humidity: 'Humidity', time: 'Date/Time' })
  })

  it('names columns by letters where headings are missing or stand twice', async () => {
    const found = await propose('2026-01-01 10:00,5,60\n2026-01-01 11:00,5,61\n', { headerRow: 0 })
    expect(found.headings.map(({ column }) => column)).toEqual(['A', 'B', 'C'])
    expect(found).toMatchObject({ headerRow: 0, time: null, temperature: null })
    const twice = await propose('Time,Temp (°C),Temp (°C)\n2026-01-01 10:00,5,60\n')
    expect(twice.headings.map(({ column }) => column)).toEqual(['Time', 'B', 'C'])
  })

  it('gives the newest kept mapping whose columns are all there', async () => {
    const kept = (column: string) =>
      climateMapping.parse({ time: { column: 'Time' }, timeZone: 'UTC', temperature: { column, unit: 'F' } })
    const earlier = [kept('Shed'), kept('Temp'), kept('RH')]
    expect((await propose('Time,Temp,RH\n2026-01-01 10:00,5,60\n', { earlier })).kept).toEqual(earlier[1])
  })
})
