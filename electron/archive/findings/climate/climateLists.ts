import type { ClimateDecision, ClimateImportSummary, ClimateMapping, ClimateStore } from '#contract/findings/climate.ts'
import { climateMapping } from '#contract/findings/climate.ts'
import type { ClimateSeries } from '#domain/climate/climateSeries.ts'
import type { Database } from '../../core/database.ts'
import { prepared } from '../../core/prepared.ts'
import { storeRecord } from '../../core/recordKind.ts'
import { readRecord, readRecords } from '../../core/recordTable.ts'
import { conflict } from '../../core/recordTrouble.ts'
import { inTransaction } from '../../core/transaction.ts'
import { climateDecisionKind, climateImportKind } from '../climateKinds.ts'
import {
  heldAgainstSeries,
  importsInUse,
  importsOfStore,
  joinedSeries,
  readingsOfImport,
  storeReader,
} from './storedSeries.ts'

/** Every import of readings, newest first. */
export function climateImports(database: Database): ClimateImportSummary[] {
  const storeOf = storeReader(database)
  const words = new Map<number, ClimateDecision>()
  for (const word of readRecords(database, climateDecisionKind, 'ORDER BY climate_decision_id'))
    words.set(word.climateImportId, word)
  return readRecords(database, climateImportKind, 'ORDER BY climate_import_id DESC').map(
    ({ mapping: _mapping, ...made }) => {
      const word = words.get(made.climateImportId)
      return {
        ...made,
        store: storeOf({ kind: made.storeKind, name: made.store }).name,
        setAside: word?.kind === 'set-aside' ? { by: word.by, reason: word.reason, recordedAt: word.recordedAt } : null,
      }
    },
  )
}

/** The mappings of imports, newest first; one that this program does not know any more is left out. */
export function climateMappings(database: Database): ClimateMapping[] {
  return readRecords(database, climateImportKind, 'ORDER BY climate_import_id DESC LIMIT 50').flatMap(({ mapping }) => {
    const read = climateMapping.safeParse(mapping)
    return read.success ? [read.data] : []
  })
}

/**
 * Records a person's word on an import of readings. Throws the trouble "conflict" where it stands so already, and where readings
 * that were brought in since have the same times.
 */
export function decideClimateImport(
  database: Database,
  made: Omit<ClimateDecision, 'climateDecisionId'>,
): ClimateDecision {
  return inTransaction(database, () => {
    const record = readRecord(database, climateImportKind, made.climateImportId)
    const used = importsOfStore(database, { kind: record.storeKind, name: record.store })
    const isUsed = used.some(({ climateImportId }) => climateImportId === made.climateImportId)
    if (isUsed === (made.kind === 'taken-back'))
      throw conflict(
        `Climate import ${made.climateImportId} is ${isUsed ? 'used' : 'set aside'} already.`,
        'Look at the list again: somebody was quicker.',
      )
    if (made.kind === 'taken-back' && used.length > 0) {
      const kept = joinedSeries(used.map((one) => readingsOfImport(database, one)))
      if (heldAgainstSeries(kept, readingsOfImport(database, record)).some((found) => found !== 0))
        throw conflict(
          `Climate import ${made.climateImportId} has readings at times for which others are used now.`,
          'Set the import aside that has them, then take this one back.',
        )
    }
    return storeRecord(database, climateDecisionKind, made)
  })
}

/** A store with all its readings that count; `imports` names them, so that whoever keeps what follows knows when it is stale. */
export type StoreReadings = {
  store: ClimateStore
  imports: number[]
  simulated: boolean
  series: ClimateSeries
}

/** The stores that have readings which count, each with the numbers of its imports. */
export function climateStores(database: Database): Omit<StoreReadings, 'series'>[] {
  const stores = new Map<string, Omit<StoreReadings, 'series'>>()
  for (const { made, store } of importsInUse(database)) {
    const key = `${store.kind} ${store.name}`
    const known = stores.get(key) ?? { store, imports: [], simulated: false }
    stores.set(key, known)
    known.imports.push(made.climateImportId)
    known.simulated ||= made.simulated
  }
  return [...stores.values()]
}

/** The readings of a store that count. */
export function climateReadings(database: Database, wanted: ClimateStore): StoreReadings {
  const made = importsOfStore(database, wanted)
  return {
    store: storeReader(database)(wanted),
    imports: made.map(({ climateImportId }) => climateImportId),
    simulated: made.some(({ simulated }) => simulated),
    series: joinedSeries(made.map((one) => readingsOfImport(database, one))),
  }
}

/** The specimens that lie in a place, or go through an exposure. */
export function specimensOfStore(database: Database, wanted: ClimateStore): number[] {
  const column = wanted.kind === 'place' ? 'place' : 'exposure'
  const { name } = storeReader(database)(wanted)
  return prepared<{ specimen_id: number }>(
    database,
    `SELECT s.specimen_id FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE coalesce((SELECT name FROM catalogue_current WHERE entry_id = s.${column}_id), r.${column}) = ?`,
  )
    .all(name)
    .map(({ specimen_id }) => specimen_id)
}
