import type { ClimateDecision, ClimateImportSummary, ClimateMapping, ClimateStore } from '#contract/findings/climate.ts'
import { climateMapping } from '#contract/findings/climate.ts'
import type { ClimateSeries } from '#domain/climate/climateSeries.ts'
import type { WaitingBlocks } from '#domain/climate/pullsToCome.ts'
import { nameInForce } from '../../catalogue/names.ts'
import type { Database } from '../../core/database.ts'
import { prepared } from '../../core/prepared.ts'
import { storeRecord } from '../../core/recordKind.ts'
import { readRecord, readRecords } from '../../core/recordTable.ts'
import { conflict } from '../../core/recordTrouble.ts'
import { inTransaction } from '../../core/transaction.ts'
import { glueUpsInForce } from '../../lists/plannedBlock.ts'
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

/** A store under the name that it has now, whatever it was called before. */
export function storeInForce(database: Database, wanted: ClimateStore): ClimateStore {
  return storeReader(database)(wanted)
}

const isIn = ({ kind }: ClimateStore) => {
  const column = kind === 'place' ? 'place' : 'exposure'
  return `${nameInForce(`s.${column}_id`, `r.${column}`)} = @name`
}

/** The specimens that lie in a place, or go through an exposure. */
export function specimensOfStore(database: Database, wanted: ClimateStore): number[] {
  const { name } = storeInForce(database, wanted)
  return prepared<{ specimen_id: number }>(
    database,
    `SELECT s.specimen_id FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE ${isIn(wanted)}`,
  )
    .all({ name })
    .map(({ specimen_id }) => specimen_id)
}

/** The glued blocks of studies that wait in a place, or in an exposure, each kind of one day and age once; `ageMonths` null: spares. */
export function waitingInStore(database: Database, wanted: ClimateStore): WaitingBlocks[] {
  const { name } = storeInForce(database, wanted)
  return prepared<WaitingBlocks>(
    database,
    `SELECT DISTINCT s.study_id AS studyId, json_extract(u.fields, '$.gluedOn') AS gluedOn, s.pull_age_months AS ageMonths,
       ${nameInForce('s.adhesive_id', 'r.adhesive')} AS adhesive, ${nameInForce('s.joint_type_id', 'r.joint_type')} AS jointType,
       r.bond_line_gap_mm AS bondLineGapMm, ${nameInForce('s.exposure_id', 'r.exposure')} AS exposure
     FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     JOIN ${glueUpsInForce} u ON u.glue_up_id = s.glue_up_id
     WHERE s.study_id IS NOT NULL AND s.standing = 'waiting' AND ${isIn(wanted)}`,
  ).all({ name })
}
