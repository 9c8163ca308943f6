import { describe, expect, it } from 'vitest'
import {
  climateImports,
  climateMappings,
  climateReadings,
  climateStores,
  decideClimateImport,
  specimensOfStore,
  storeInForce,
  waitingInStore,
} from '#archive/findings/climate/climateLists.ts'
import { storeReadings } from '#archive/findings/climate/storeReadings.ts'
import { correctCatalogueEntry } from '#archive/programme/catalogue.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { pulledStudy } from '../../pulledStudy.ts'
import { archiveInMemory, morning, specimenFields } from '../../storedStudy.ts'
import { madeReadings } from './madeReadings.ts'

const loft = { kind: 'exposure', name: 'loft' } as const
function stored(...imports: number[][]) {
  const database = archiveInMemory()
  for (const hours of imports)
    storeReadings(
      database,
      () => {},
      () => false,
      madeReadings(hours),
    )
  return database
}
const word = (kind: 'set-aside' | 'taken-back', climateImportId = 1) => ({
  ...{ climateImportId, kind, recordedAt: morning, by: 'bench', reason: 'it hung in the office' },
})

describe('imports of readings', () => {
  it('count until they are set aside, and again when that is taken back', () => {
    const database = stored([0, 1], [5, 6])
    decideClimateImport(database, word('set-aside'))
    expect(climateImports(database).map(({ setAside }) => setAside?.reason ?? null)).toEqual([
      null,
      'it hung in the office',
    ])
    expect(climateReadings(database, loft).imports).toEqual([2])
    decideClimateImport(database, word('taken-back'))
    expect(climateReadings(database, loft).imports).toEqual([1, 2])
  })

  it('are decided on once', () => {
    const database = stored([0, 1])
    expect(() => decideClimateImport(database, word('taken-back'))).toThrow('is used already')
    decideClimateImport(database, word('set-aside'))
    expect(() => decideClimateImport(database, word('set-aside'))).toThrow('is set aside already')
  })

  it('are not taken back where others have their times now', () => {
    const database = stored([0, 1])
    decideClimateImport(database, word('set-aside'))
    storeReadings(
      database,
      () => {},
      () => false,
      madeReadings([1, 2]),
    )
    expect(() => decideClimateImport(database, word('taken-back'))).toThrow('at times for which others are used now')
  })

  it('belong to their store whatever it is called now', () => {
    const database = stored([0, 1])
    const entryId = database
      .prepare<[], { entry_id: number }>(`SELECT entry_id FROM catalogue_current WHERE kind = 'exposure'`)
      .get()!.entry_id
    const fields = { kind: 'exposure', name: 'sail loft', notes: '' } as const
    correctCatalogueEntry(database, entryId, fields, morning, { by: 'bench', reason: 'its name' })
    expect(climateStores(database)).toEqual([
      { store: { kind: 'exposure', name: 'sail loft' }, imports: [1], simulated: false },
    ])
    expect(climateReadings(database, loft).imports).toEqual([1])
    expect(climateImports(database)[0]!.store).toBe('sail loft')
    expect(storeInForce(database, loft).name).toBe('sail loft')
  })

  it('give their mappings back, newest first', () => {
    expect(climateMappings(stored([0], [1]))).toMatchObject([{ timeZone: 'UTC' }, { timeZone: 'UTC' }])
  })

  it('lie beside the specimens of the store', () => {
    const database = stored([0])
    const fields = ['loft', 'bilge', 'loft'].map((exposure, i) => specimenFields(`C1-${i}`, { exposure }))
    addSpecimens(database, fields, morning, 'bench')
    expect(specimensOfStore(database, loft)).toEqual([1, 3])
    expect(specimensOfStore(database, { kind: 'place', name: 'nowhere' })).toEqual([])
  })

  it('lie beside the blocks that wait there for a pull, each kind once', () => {
    const database = stored([0])
    const { studyId } = pulledStudy(database)
    const kind = { adhesive: 'casein C1', jointType: 'long grain to long grain', bondLineGapMm: 0, exposure: 'loft' }
    const found = waitingInStore(database, loft).sort((a, b) => (a.ageMonths ?? 99) - (b.ageMonths ?? 99))
    expect(found).toEqual([6, 12, null].map((ageMonths) => ({ ...kind, studyId, gluedOn: '2030-08-31', ageMonths })))
    expect(waitingInStore(database, { kind: 'exposure', name: 'bilge' })).toEqual([])
  })
})
