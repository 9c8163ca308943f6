// Held by tests/shells/commands/climateCommand.spec.ts.
import { createHash } from 'node:crypto'
import { basename } from 'node:path'
import { openReader } from '#archive/archiveReader.ts'
import { Trouble } from '#contract/errors.ts'
import { type ClimateMapping, type ClimateStore, climateLimits, climateMapping } from '#contract/findings/climate.ts'
import type { ClimateOfStore, ClimateOutcome, ClimateProposal, LoggerRow } from '#contract/findings/climateAnswers.ts'
import type { Progress } from '#contract/tasks.ts'
import { localDayOf } from '#domain/programme/calendar/calendarDay.ts'
import { climateOutcome, loggerRows } from '#exchange/climate/loggerOutcome.ts'
import { proposeLogger } from '#exchange/climate/proposeLogger.ts'
import { readLogger } from '#exchange/climate/readLogger.ts'
import { openOwnArchive } from './core/realParts.ts'
import { answerClimate } from './findings/climate/answerClimate.ts'
import { bytesOf, nobodyNamed, stoppedInWords, trying } from './importFile.ts'
import { watchChain } from './keeping/watchChain.ts'
import { mappingFrom } from './specimens/importTable.ts'

/** A logger's file without an engine: its mapping, the archive, where the logger hung, and who brings it in (null: the name in the archive's settings). */
export type FileOfClimate = {
  file: string
  mapFile: string
  archive: string
  store: ClimateStore
  by: string | null
  dryRun: boolean
}

/** What an import came to, and every row of the file as it is asked for. */
export type ClimateImported = { outcome: ClimateOutcome; mapping: ClimateMapping; rows(): Generator<LoggerRow> }

/** What the columns of a logger's file may mean. Rejects with a Trouble that names the file. */
export async function proposeClimate(file: string): Promise<ClimateProposal> {
  return proposeLogger(basename(file), await bytesOf(file), { sheet: null, headerRow: null, earlier: [] })
}

/**
 * Brings a logger's file into an archive, which is made where there is none; in a dry run nothing is stored or made. Rejects with
 * the Trouble of reading or storing, `cancelled` when it was stopped.
 */
export async function importClimate(
  asked: FileOfClimate,
  program: string,
  keptHeads: string,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<ClimateImported> {
  const { store, dryRun } = asked
  const mapping = mappingFrom(asked.mapFile, (await bytesOf(asked.mapFile)).toString('utf8'), climateMapping)
  const content = await bytesOf(asked.file)
  const fileName = basename(asked.file)
  const recordedAt = new Date().toISOString()
  const nowS = Math.floor(Date.parse(recordedAt) / 1000)
  const told = (done: number, total: number) => onProgress({ task: 'climate', done, total })
  const file = await readLogger(fileName, content, mapping, nowS, told, signal).catch(stoppedInWords(signal))
  const { timeS, temperature, humidityPercent } = file.readings
  const readings = { timeS, temperature, humidityPercent }
  const temperatureUnit = mapping.temperature.unit
  const fileSha256 = createHash('sha256').update(content).digest('hex')
  const done = (judged: Uint8Array): ClimateImported => ({
    outcome: climateOutcome(file, judged, { fileSha256, dryRun }),
    mapping,
    rows: () => loggerRows(file, judged),
  })
  if (dryRun)
    return done(
      await trying(asked.archive, program, (archive) => archive.judgeReadings(store, temperatureUnit, readings)),
    )
  const archive = await openOwnArchive(asked.archive, program)
  try {
    const watch = await watchChain(archive, keptHeads)
    const { operator } = await archive.preferences()
    const by = asked.by ?? (operator === '' ? nobodyNamed : operator)
    const said = {
      ...{ recordedAt, by, fileName, fileSha256, mapping: JSON.parse(JSON.stringify(mapping)), temperatureUnit },
      ...{ rejected: file.rejectedCount, simulated: false },
    }
    const judged = await archive.storeReadings(onProgress, signal, { store, readings, said })
    await watch.close()
    return done(judged)
  } finally {
    await archive.close()
  }
}

/** The climate of a store as an archive holds it. Rejects with the Trouble of opening it, `not-found` where it holds none of that store. */
export function climateOfArchive(path: string, program: string, store: ClimateStore): ClimateOfStore {
  const instant = new Date().toISOString()
  const archive = openReader({ path, program, instant })
  const asked = { store, limits: climateLimits.parse({}), today: localDayOf(instant) }
  try {
    const answer = archive.atOneMoment(() => answerClimate(archive, asked, new Map()))
    if (answer.climate !== null) return answer
    throw new Trouble(
      'not-found',
      `There is no climate of the ${store.kind} "${store.name}" in this archive.`,
      'Bring in the file of a logger that hung there first.',
    )
  } finally {
    archive.close()
  }
}
