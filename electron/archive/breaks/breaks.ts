import type Database from 'better-sqlite3'
import type { BreakEnd, BreakHeader, Ending } from '#contract/breaks/capture.ts'
import type { RawCurve, SampleBlock } from '#contract/breaks/curve.ts'
import type { NewEvaluation } from '#contract/breaks/evaluation.ts'
import { readSession } from '../bench/sessions.ts'
import { canonicalJson } from '../core/canonicalJson.ts'
import { appendLedger } from '../core/ledger.ts'
import { prepared } from '../core/prepared.ts'
import { conflict } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { curveSha256 } from '../curves/curveHash.ts'
import { readBlocks, storeBlock, storeCurve } from '../curves/curveStore.ts'
import { refreshBreak } from '../lists/current.ts'
import { specimenRevisions } from '../specimens/specimens.ts'
import { breakContent, readEnd, readHeader } from './breakHeaders.ts'
import { storeEvaluation } from './evaluations.ts'

/** 2^50 microseconds, 35 years: beyond it times would no longer be coded without loss. */
const latestUs = 2 ** 50

/** Stores what is known before the first sample. */
export function beginBreak(database: Database.Database, header: Omit<BreakHeader, 'breakId'>): BreakHeader {
  return database
    .transaction(() => {
      readSession(database, header.sessionId)
      if (header.specimenId !== null) specimenRevisions(database, header.specimenId)
      const { lastInsertRowid } = prepared(
        database,
        `INSERT INTO break_header (session_id, specimen_id, started_at, reading_unit, scale, tare, settings)
         VALUES (?, ?, ?, ?, ?, ?, ?)`,
      ).run(
        header.sessionId,
        header.specimenId,
        header.startedAt,
        header.readingUnit,
        canonicalJson(header.scale),
        header.tare === null ? null : canonicalJson(header.tare),
        canonicalJson(header.settings),
      )
      const breakId = Number(lastInsertRowid)
      refreshBreak(database, breakId)
      return readHeader(database, breakId)
    })
    .immediate()
}

function refuseFinished(database: Database.Database, breakId: number): void {
  if (readEnd(database, breakId) !== null)
    throw conflict(`Break ${breakId} is finished and takes no more samples.`, 'Begin a new break.')
}

function checkSamples(samples: SampleBlock, lastUs: number): void {
  const { timeUs, readings } = samples
  if (timeUs.length !== readings.length)
    throw new RangeError(`appendSamples got ${timeUs.length} times and ${readings.length} readings`)
  let last = lastUs
  for (let i = 0; i < timeUs.length; i++) {
    const time = timeUs[i]!
    if (!Number.isInteger(time) || time <= last || time > latestUs)
      throw new RangeError(`appendSamples requires whole microseconds that rise; ${time} follows ${last}`)
    if (!Number.isFinite(readings[i]))
      throw new RangeError(`appendSamples requires finite readings; one at ${time} is not`)
    last = time
  }
}

/** Makes samples of a running break durable: one commit. */
export function appendSamples(database: Database.Database, breakId: number, samples: SampleBlock): void {
  database
    .transaction(() => {
      const last = prepared<{ block: number; last_us: number }>(
        database,
        'SELECT block, last_us FROM running_block WHERE break_id = ? ORDER BY block DESC LIMIT 1',
      ).get(breakId)
      if (last === undefined) readHeader(database, breakId)
      refuseFinished(database, breakId)
      checkSamples(samples, last?.last_us ?? Number.NEGATIVE_INFINITY)
      if (samples.timeUs.length === 0) return
      storeBlock(database, 'running_block', breakId, (last?.block ?? -1) + 1, samples)
    })
    .immediate()
}

/** Seals the curve of a running break and enters the break in the ledger. Call it inside a transaction. */
export function sealBreak(
  database: Database.Database,
  breakId: number,
  ending: Ending,
  missingSamples: number,
  endedAt: (lastUs: number) => string,
): BreakEnd {
  readHeader(database, breakId)
  refuseFinished(database, breakId)
  const curve = readBlocks(database, 'running_block', breakId)
  storeCurve(database, breakId, curve)
  const end: BreakEnd = {
    breakId,
    endedAt: endedAt(curve.timeUs.at(-1) ?? 0),
    ending,
    samples: curve.timeUs.length,
    missingSamples,
    curveSha256: curveSha256(curve),
  }
  prepared(
    database,
    `INSERT INTO break_end (break_id, ended_at, ending, samples, missing_samples, curve_sha256)
     VALUES (@breakId, @endedAt, @ending, @samples, @missingSamples, @curveSha256)`,
  ).run(end)
  appendLedger(database, 'break', breakId, end.endedAt, breakContent(database, breakId))
  prepared(database, 'DELETE FROM running_block WHERE break_id = ?').run(breakId)
  touch(database, `curve ${breakId}`)
  return end
}

/** Seals the curve, enters the break in the ledger and stores its first evaluation: all or nothing. */
export function finishBreak(
  database: Database.Database,
  breakId: number,
  endedAt: string,
  ending: Ending,
  missingSamples: number,
  evaluation: Omit<NewEvaluation, 'breakId'>,
): BreakEnd {
  return database
    .transaction(() => {
      const end = sealBreak(database, breakId, ending, missingSamples, () => endedAt)
      storeEvaluation(database, { ...evaluation, breakId })
      refreshBreak(database, breakId)
      return end
    })
    .immediate()
}

/** The samples of a break, also of one that still runs (as far as they are stored). */
function readSamples(database: Database.Database, breakId: number): SampleBlock {
  const finished = readEnd(database, breakId) !== null
  if (!finished) readHeader(database, breakId)
  return readBlocks(database, finished ? 'curve_block' : 'running_block', breakId)
}

/** The raw curve with times in seconds. */
export function readCurve(database: Database.Database, breakId: number): RawCurve {
  const { timeUs, readings } = readSamples(database, breakId)
  const timeS = timeUs
  for (let i = 0; i < timeS.length; i++) timeS[i] = timeS[i]! / 1e6
  return { timeS, readings }
}
