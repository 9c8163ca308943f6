import type { BreakEnd, BreakHeader, Ending } from '#contract/breaks/capture.ts'
import type { RawCurve, SampleBlock } from '#contract/breaks/curve.ts'
import type { NewEvaluation } from '#contract/breaks/evaluation.ts'
import type { Database } from '../core/database.ts'
import { appendLedger } from '../core/ledger.ts'
import { prepared } from '../core/prepared.ts'
import { insertRow } from '../core/recordTable.ts'
import { conflict } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { inTransaction, inTransactionSyncedLater } from '../core/transaction.ts'
import { curveSha256 } from '../curves/curveHash.ts'
import { refreshBreak } from '../lists/refresh.ts'
import { requireStored } from '../lists/stored.ts'
import { breakKind, endTable, headerTable, readEnd, readHeader } from './breakHeaders.ts'
import { readBlocks, storeBlock, storeCurve } from './curveStore.ts'
import { storeEvaluation } from './evaluations.ts'

/** 2^50 microseconds, 35 years: beyond it times would no longer be coded without loss. */
const latestUs = 2 ** 50

/** Stores what is known before the first sample; like its samples, it survives the program from now on. */
export function beginBreak(database: Database, header: Omit<BreakHeader, 'breakId'>): BreakHeader {
  return inTransactionSyncedLater(database, () => {
    requireStored(database, 'session', header.sessionId)
    if (header.specimenId !== null) requireStored(database, 'specimen', header.specimenId)
    const { stored } = insertRow(database, headerTable, header)
    refreshBreak(database, stored.breakId)
    return stored
  })
}

function refuseFinished(database: Database, breakId: number): void {
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

/** Keeps samples of a running break, whatever becomes of the program: one commit, which the disk syncs as soon as it can. */
export function appendSamples(database: Database, breakId: number, samples: SampleBlock): void {
  inTransactionSyncedLater(database, () => {
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
}

/** Seals the curve of a running break and enters the break in the ledger. Call it inside a transaction. */
export function sealBreak(
  database: Database,
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
  insertRow(database, endTable, end)
  appendLedger(database, breakKind.name, breakId, end.endedAt, breakKind.content(database, breakId))
  prepared(database, 'DELETE FROM running_block WHERE break_id = ?').run(breakId)
  touch(database, `curve ${breakId}`)
  return end
}

/** Seals the curve, enters the break in the ledger and stores its first evaluation: all or nothing. */
export function finishBreak(
  database: Database,
  breakId: number,
  endedAt: string,
  ending: Ending,
  missingSamples: number,
  evaluation: Omit<NewEvaluation, 'breakId'>,
): BreakEnd {
  return inTransaction(database, () => {
    const end = sealBreak(database, breakId, ending, missingSamples, () => endedAt)
    storeEvaluation(database, { ...evaluation, breakId })
    refreshBreak(database, breakId)
    return end
  })
}

/** The samples of a break, also of one that still runs (as far as they are stored). */
function readSamples(database: Database, breakId: number): SampleBlock {
  const finished = readEnd(database, breakId) !== null
  if (!finished) readHeader(database, breakId)
  return readBlocks(database, finished ? 'curve_block' : 'running_block', breakId)
}

/** The raw curve with times in seconds. */
export function readCurve(database: Database, breakId: number): RawCurve {
  const { timeUs, readings } = readSamples(database, breakId)
  const timeS = timeUs
  for (let i = 0; i < timeS.length; i++) timeS[i] = timeS[i]! / 1e6
  return { timeS, readings }
}
