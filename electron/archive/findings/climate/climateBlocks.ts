// Held by tests/archive/findings/climate/storeReadings.spec.ts.
import { Trouble } from '#contract/errors.ts'
import type { Database } from '../../core/database.ts'
import { prepared } from '../../core/prepared.ts'
import { type CurveBlock, decodeBlock, encodeBlock } from '../../curves/curveBlock.ts'

/** What of the air was read: each has times of its own, as a reading may lack one. */
export type ClimateQuantity = 'temperature' | 'humidity'

/** Readings of one quantity: whole seconds since 1970 that rise, and finite values. */
export type QuantityReadings = { timeS: Float64Array<ArrayBuffer>; values: Float64Array<ArrayBuffer> }

/** As many as a block of a curve has. */
const readingsPerBlock = 65_536

type BlockRow = Omit<CurveBlock, 'samples' | 'first_us' | 'last_us' | 'interval_us'> & {
  block: number
  readings_held: number
  first_unix_s: number
  last_unix_s: number
  interval_s: number
}

/** Stores the readings of an import in coded blocks. Call it inside the transaction that stores the import. */
export function storeClimateBlocks(
  database: Database,
  climateImportId: number,
  quantity: ClimateQuantity,
  { timeS, values }: QuantityReadings,
): void {
  const insert = prepared(
    database,
    `INSERT INTO climate_block (climate_import_id, quantity, block, readings_held, first_unix_s, last_unix_s, interval_s,
       times, reading_coding, decimals, differences, first_mantissa, first_step, readings, sha256)
     VALUES (@climateImportId, @quantity, @block, @samples, @first_us, @last_us, @interval_us,
       @times, @reading_coding, @decimals, @differences, @first_mantissa, @first_step, @readings, @sha256)`,
  )
  for (let block = 0, start = 0; start < timeS.length; block++, start += readingsPerBlock) {
    const end = start + readingsPerBlock
    const coded = encodeBlock({ timeUs: timeS.subarray(start, end), readings: values.subarray(start, end) })
    insert.run({ climateImportId, quantity, block, ...coded })
  }
}

/** Reads and joins the blocks of an import; throws the trouble "archive-damaged" naming the block that does not hold. */
export function readClimateBlocks(
  database: Database,
  climateImportId: number,
  quantity: ClimateQuantity,
): QuantityReadings {
  const rows = prepared<BlockRow>(
    database,
    'SELECT * FROM climate_block WHERE climate_import_id = ? AND quantity = ? ORDER BY block',
  ).all(climateImportId, quantity)
  const count = rows.reduce((sum, row) => sum + row.readings_held, 0)
  const read = { timeS: new Float64Array(count), values: new Float64Array(count) }
  let start = 0
  rows.forEach((row, i) => {
    const { block, readings_held, first_unix_s, last_unix_s, interval_s, ...coded } = row
    const end = start + readings_held
    try {
      if (block !== i) throw new RangeError(`it should be block ${i}`)
      decodeBlock(
        { ...coded, samples: readings_held, first_us: first_unix_s, last_us: last_unix_s, interval_us: interval_s },
        read.timeS.subarray(start, end),
        read.values.subarray(start, end),
      )
    } catch (thrown) {
      if (!(thrown instanceof RangeError)) throw thrown
      throw new Trouble(
        'archive-damaged',
        `The ${quantity} of climate import ${climateImportId} is damaged in block ${block}: ${thrown.message}.`,
        'Set this import aside and bring its file in again. The rest of the archive can still be used.',
      )
    }
    start = end
  })
  return read
}
