import type { ClimateOutcome, LoggerRow } from '#contract/findings/climateAnswers.ts'
import { standingTimes } from '#domain/climate/climateSeries.ts'
import { otherReadingWords, sameReadingWords } from '#words/findings/climate/loggerWords.ts'
import type { LoggerFile } from './readLogger.ts'

/** So many of the first rows are shown, so many rejected ones, and so many gaps, the longest. */
const shownRows = 30
const shownRejected = 400
const shownGaps = 20

/** What became of a reading; `judged`: what the archive found at its time, as `judgeReadings` says. */
function readRow({ readings }: LoggerFile, judged: Uint8Array, i: number): LoggerRow {
  const humidity = readings.humidityPercent[i]!
  const row = readings.row[i]!
  const kept = {
    ...{ row, timeS: readings.timeS[i]!, temperature: readings.temperature[i]! },
    humidityPercent: Number.isNaN(humidity) ? null : humidity,
  }
  if (judged[i] === 1) return { ...kept, fate: 'already-there', reason: sameReadingWords }
  if (judged[i] === 2) return { ...kept, fate: 'rejected', reason: otherReadingWords(row) }
  return { ...kept, fate: 'new', reason: null }
}

const spoiltRow = ({ row, reason }: { row: number; reason: string }): LoggerRow => ({
  ...{ row, fate: 'rejected', timeS: null, temperature: null, humidityPercent: null, reason },
})

/** Every row of a file that gave a reading or is named as rejected, in the order of the file. */
export function* loggerRows(file: LoggerFile, judged: Uint8Array): Generator<LoggerRow> {
  const { row } = file.readings
  const count = row.length
  let spoilt = 0
  for (let step = 0; step < count; step++) {
    const i = file.newestFirst ? count - 1 - step : step
    while (spoilt < file.rejected.length && file.rejected[spoilt]!.row < row[i]!)
      yield spoiltRow(file.rejected[spoilt++]!)
    yield readRow(file, judged, i)
  }
  while (spoilt < file.rejected.length) yield spoiltRow(file.rejected[spoilt++]!)
}

/** What an import came to, with the rows that a person wants to see. */
export function climateOutcome(
  file: LoggerFile,
  judged: Uint8Array,
  { fileSha256, dryRun }: { fileSha256: string; dryRun: boolean },
): ClimateOutcome {
  const rows: LoggerRow[] = []
  let [seen, rejected] = [0, 0]
  for (const row of loggerRows(file, judged)) {
    if (row.fate === 'rejected' ? rejected++ < shownRejected : seen < shownRows) rows.push(row)
    seen += 1
  }
  const count = (fate: number) => judged.reduce((sum, found) => sum + Number(found === fate), 0)
  const { timeS } = file.readings
  const { gaps } = standingTimes(timeS)
  return {
    ...{ new: count(0), alreadyThere: count(1), rejected: file.rejectedCount + count(2), fileSha256 },
    ...{ fromS: timeS[0] ?? null, toS: timeS.at(-1) ?? null, rows },
    gaps: gaps.toSorted((one, other) => other.toS - other.fromS - (one.toS - one.fromS)).slice(0, shownGaps),
    ...{ gapCount: gaps.length, newestFirst: file.newestFirst, dryRun },
  }
}
