import { describe, expect, it } from 'vitest'
import { climateImports, climateReadings } from '#archive/findings/climate/climateLists.ts'
import { type NewReadings, storeReadings } from '#archive/findings/climate/storeReadings.ts'
import { archiveInMemory } from '../../storedStudy.ts'
import { hoursFrom, madeReadings } from './madeReadings.ts'

const loft = { kind: 'exposure', name: 'loft' } as const
const store = (database: ReturnType<typeof archiveInMemory>, made: NewReadings) =>
  storeReadings(
    database,
    () => {},
    () => false,
    made,
  )

describe('readings of a logger', () => {
  it('are kept as they were written and come back the same, humidity or not', () => {
    const database = archiveInMemory()
    const made = madeReadings(hoursFrom(0, 100))
    store(database, made)
    expect(climateReadings(database, loft)).toMatchObject({
      ...{ store: loft, imports: [1], simulated: false },
      series: {
        timeS: made.readings.timeS,
        temperatureC: made.readings.temperature,
        humidityPercent: made.readings.humidityPercent,
      },
    })
    expect(climateImports(database)).toMatchObject([{ readings: 100, humidityReadings: 80, setAside: null }])
  })

  it('of a second import of the same file add nothing, not even a record', () => {
    const database = archiveInMemory()
    expect([...store(database, madeReadings([0, 1, 2]))]).toEqual([0, 0, 0])
    expect([...store(database, madeReadings([0, 1, 2]))]).toEqual([1, 1, 1])
    expect(climateImports(database)).toHaveLength(1)
  })

  it('of a file that grew add what is new, and what contradicts is counted as rejected', () => {
    const database = archiveInMemory()
    store(database, madeReadings([0, 1, 2]))
    const grown = madeReadings([0, 1, 2, 3, 4])
    grown.readings.temperature[1] = 40
    expect([...store(database, grown)]).toEqual([1, 2, 1, 0, 0])
    expect(climateImports(database)[0]).toMatchObject({ readings: 2, rejected: 1 })
    expect(climateReadings(database, loft).series.timeS).toHaveLength(5)
  })

  it('in degrees Fahrenheit stand as they were written and are read in Celsius', () => {
    const database = archiveInMemory()
    const made = madeReadings([0, 1], { temperatureUnit: 'F' })
    made.readings.temperature.set([32, 50])
    store(database, made)
    expect([...climateReadings(database, loft).series.temperatureC]).toEqual([0, 10])
    expect([...store(database, made)]).toEqual([1, 1])
  })

  it('of two imports that lie between each other are one series', () => {
    const database = archiveInMemory()
    store(database, madeReadings([0, 2, 4]))
    store(database, madeReadings([1, 3]))
    const { timeS } = climateReadings(database, loft).series
    expect([...timeS].map((time) => (time - timeS[0]!) / 3600)).toEqual([0, 1, 2, 3, 4])
  })

  it('enter the store in the catalogue where it is not there', () => {
    const database = archiveInMemory()
    store(database, { ...madeReadings([0]), store: { kind: 'place', name: 'shed' } })
    expect(database.prepare(`SELECT kind, name FROM catalogue_current WHERE kind = 'place'`).all()).toEqual([
      { kind: 'place', name: 'shed' },
    ])
  })

  it('are all kept or, where it is stopped, none', () => {
    const database = archiveInMemory()
    expect(() =>
      storeReadings(
        database,
        () => {},
        () => true,
        madeReadings([0, 1]),
      ),
    ).toThrow('stopped')
    expect(climateImports(database)).toEqual([])
  })

  it('stay as they are: no block and no import is changed or removed', () => {
    const database = archiveInMemory()
    store(database, madeReadings([0]))
    for (const table of ['climate_import', 'climate_block'])
      expect(() => database.exec(`DELETE FROM ${table}`), table).toThrow('append-only')
  })

  it('of ten years take less than two bytes an hour', () => {
    const database = archiveInMemory()
    const made = madeReadings(hoursFrom(0, 87_600))
    for (let i = 0; i < 87_600; i++) made.readings.humidityPercent[i] = 60 + ((i * i) % 37) / 10
    store(database, made)
    const { bytes } = database
      .prepare<[], { bytes: number }>('SELECT sum(length(times) + length(readings)) AS bytes FROM climate_block')
      .get()!
    expect(bytes / 87_600).toBeLessThan(2)
  })
})
