// Held by tests/archive/breaks/breaks.spec.ts.
import type { SampleBlock } from '#contract/breaks/curve.ts'
import { Trouble } from '#contract/errors.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { bytesMatch, decodeBlock, encodeBlock } from '../curves/curveBlock.ts'
import { isAsStored, type NumberedBlock, runningSha256 } from './runningChecksum.ts'

/** Small enough to be read in a blink, large enough to fill whole pages. */
const samplesPerBlock = 65_536

type BlockTable = 'curve_block' | 'running_block'

/** Stores one coded stretch. */
export function storeBlock(
  database: Database,
  table: BlockTable,
  breakId: number,
  block: number,
  samples: SampleBlock,
): void {
  const coded = { block, ...encodeBlock(samples) }
  const sha256 = table === 'running_block' ? runningSha256(database, breakId, coded) : coded.sha256
  prepared(
    database,
    `INSERT INTO ${table} (break_id, block, samples, first_us, last_us, interval_us, times, reading_coding, decimals,
       differences, first_mantissa, first_step, readings, sha256)
     VALUES (@breakId, @block, @samples, @first_us, @last_us, @interval_us, @times, @reading_coding, @decimals,
       @differences, @first_mantissa, @first_step, @readings, @sha256)`,
  ).run({ breakId, ...coded, sha256 })
}

/** Stores a whole curve in sealed blocks. */
export function storeCurve(database: Database, breakId: number, curve: SampleBlock): void {
  for (let block = 0, start = 0; start < curve.timeUs.length; block++, start += samplesPerBlock) {
    const end = start + samplesPerBlock
    storeBlock(database, 'curve_block', breakId, block, {
      timeUs: curve.timeUs.subarray(start, end),
      readings: curve.readings.subarray(start, end),
    })
  }
}

/** The two statements that read a curve, also looked at by the test of their query plan. */
export const readBlocksText: Readonly<Record<BlockTable, string>> = {
  curve_block: 'SELECT * FROM curve_block WHERE break_id = ? ORDER BY block',
  running_block: 'SELECT * FROM running_block WHERE break_id = ? ORDER BY block',
}

/** Reads and joins the blocks of a break; throws the trouble "archive-damaged" naming the block that does not hold. */
export function readBlocks(database: Database, table: BlockTable, breakId: number): SampleBlock {
  const blocks = prepared<NumberedBlock & { break_id: number }>(database, readBlocksText[table])
    .all(breakId)
    .map(({ break_id: _breakId, ...block }) => block)
  const samples = blocks.reduce((sum, block) => sum + block.samples, 0)
  const curve = { timeUs: new Float64Array(samples), readings: new Float64Array(samples) }
  let start = 0
  blocks.forEach((block, i) => {
    const end = start + block.samples
    try {
      if (block.block !== i) throw new RangeError(`it should be block ${i}`)
      const isWhole = table === 'running_block' ? isAsStored(database, breakId, block) : bytesMatch(block)
      decodeBlock(block, curve.timeUs.subarray(start, end), curve.readings.subarray(start, end), isWhole)
    } catch (thrown) {
      if (!(thrown instanceof RangeError)) throw thrown
      throw new Trouble(
        'archive-damaged',
        `The curve of break ${breakId} is damaged in block ${block.block}: ${thrown.message}.`,
        'Take this break from a backup. The rest of the archive can still be used; `verify` lists every fault.',
      )
    }
    start = end
  })
  return curve
}
