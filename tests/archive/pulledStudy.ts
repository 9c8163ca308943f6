import { join } from 'node:path'
import type Database from 'better-sqlite3'
import { applicationId } from '#archive/core/openDatabase.ts'
import { withdrawSpecimens } from '#archive/specimens/manySpecimens.ts'
import { glueBlocks, storeBlocks, storeStudy } from './storedProgramme.ts'
import { archiveInMemory, morning, storeBreak, temporaryFolder } from './storedStudy.ts'

/**
 * A study of the invented boatyard school with pulls at once, at 6 and at 12 months: three blocks each and two spares, glued on
 * 31 August 2030. Those of the first pull are broken; one of the second was lost.
 */
export function pulledStudy(database: Database.Database): {
  studyId: number
  blockIds: number[]
  specimenIds: number[]
} {
  const studyId = storeStudy(database, { agesMonths: [0, 6, 12], sparesPerSeries: 2, windowDays: 14, cvPercent: 10 })
  const ages = [0, 0, 0, 6, 6, 6, 12, 12, 12, null, null]
  const blockIds = storeBlocks(
    database,
    studyId,
    ages.map((ageMonths) => ({ ageMonths })),
  )
  const specimenIds = glueBlocks(database, studyId, blockIds, '2030-08-31')
  for (const specimenId of specimenIds.slice(0, 3)) storeBreak(database, specimenId)
  withdraw(database, specimenIds[3]!)
  return { studyId, blockIds, specimenIds }
}

export function withdraw(database: Database.Database, specimenId: number): void {
  const signed = { by: 'bench', reason: 'fell off the shelf' }
  withdrawSpecimens(
    database,
    () => {},
    () => false,
    [specimenId],
    'withdrawn',
    morning,
    signed,
  )
}

/** An archive in memory as a file, which is gone after the test. */
export function archiveFileOf(fill: (database: Database.Database) => void): string {
  const path = join(temporaryFolder(), 'pulls.breakledger')
  const database = archiveInMemory()
  database.pragma(`application_id = ${applicationId}`)
  fill(database)
  database.exec(`VACUUM INTO '${path}'`)
  return path
}
