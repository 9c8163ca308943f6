import { medianAbsoluteDeviation } from '../../numbers/medianAbsoluteDeviation.ts'
import { median } from '../../numbers/quantile.ts'

/** A block as the calipers gave it, mm; null: not measured. */
export type MeasuredSize = { readonly lengthMm: number | null; readonly widthMm: number | null }

/** What is asked about one side of a block; `expectedMm` is the side as planned, or the median of the others. */
export type SizeDoubt =
  /** So many times the expected size, or one so manieth of it, is a point or a comma at the wrong place. */
  | { kind: 'decimal-point'; side: Side; mm: number; expectedMm: number; instead: number }
  /** In the other unit, inches or millimetres, it would be what is expected. */
  | { kind: 'other-unit'; side: Side; mm: number; expectedMm: number; instead: number }
  /** Length and width are each other's. */
  | { kind: 'swapped' }
  | { kind: 'far'; side: Side; mm: number; expectedMm: number }
  /** Within reason, but the others lie closer together. */
  | { kind: 'outlying'; side: Side; mm: number; expectedMm: number }
  | { kind: 'side-missing'; side: Side }

export type Side = 'length' | 'width'
const sides: readonly Side[] = ['length', 'width']

/** A cut overlap that is this share larger or smaller than planned is asked about. Common practice, no source. */
const farShare = 0.15
/** Fewer sizes than this say nothing about one of them. */
const fewest = 6
/** Among sizes that are all but equal, one that differs by less than this share of them is one of them. */
const sameShare = 0.02
/** A modified z score beyond this is pointed out. */
const mostScore = 3.5
const slips = [10, 100, 1000, 0.1, 0.01, 0.001]
const mmPerInch = 25.4

/**
 * What is to be asked about each block of a glue-up, in the order of the blocks: nothing, or what its size is doubtful for.
 * A side is held against the planned one first and then against the median of all, by the modified z score
 *
 *   0.6745 (x − median) / MAD, beyond ±3.5      MAD the median of the distances from the median
 *
 * Source: Iglewicz and Hoaglin, in NIST/SEMATECH e-Handbook 1.3.5.17. Checked: tests/domain/programme/glueUp/sizeDoubts.spec.ts
 * against R mad.
 */
export function sizeDoubts(sizes: readonly MeasuredSize[], planned: MeasuredSize): SizeDoubt[][] {
  const spreads = { length: spreadOf(sizes, 'length'), width: spreadOf(sizes, 'width') }
  const expected = {
    length: planned.lengthMm ?? spreads.length?.medianMm ?? null,
    width: planned.widthMm ?? spreads.width?.medianMm ?? null,
  }
  return sizes.map((size) => {
    if (isSwapped(size, expected)) return [{ kind: 'swapped' }]
    return sides.flatMap((side) => {
      const mm = sideOf(size, side)
      if (mm !== null) return sideDoubts(side, mm, expected[side], spreads[side])
      return sideOf(size, other(side)) === null ? [] : [{ kind: 'side-missing' as const, side }]
    })
  })
}

function sideDoubts(side: Side, mm: number, expectedMm: number | null, spread: Spread | null): SizeDoubt[] {
  const about = { side, mm }
  if (expectedMm !== null && !isNear(mm, expectedMm)) {
    const slip = slips.find((times) => isNear(mm / times, expectedMm))
    if (slip !== undefined) return [{ kind: 'decimal-point', ...about, expectedMm, instead: mm / slip }]
    const unit = [mmPerInch, 1 / mmPerInch].find((times) => isNear(mm * times, expectedMm))
    if (unit !== undefined) return [{ kind: 'other-unit', ...about, expectedMm, instead: mm * unit }]
    return [{ kind: 'far', ...about, expectedMm }]
  }
  return spread !== null && isOutlying(mm, spread) ? [{ kind: 'outlying', ...about, expectedMm: spread.medianMm }] : []
}

type Spread = { medianMm: number; madMm: number }

function spreadOf(sizes: readonly MeasuredSize[], side: Side): Spread | null {
  const values = sizes.map((size) => sideOf(size, side)).filter((mm) => mm !== null)
  if (values.length < fewest) return null
  return { medianMm: median(values), madMm: medianAbsoluteDeviation(values) }
}

function isOutlying(mm: number, { medianMm, madMm }: Spread): boolean {
  const distance = Math.abs(mm - medianMm)
  return distance > sameShare * medianMm && 0.6745 * distance > mostScore * madMm
}

function isSwapped({ lengthMm, widthMm }: MeasuredSize, { length, width }: Record<Side, number | null>): boolean {
  if (lengthMm === null || widthMm === null || length === null || width === null) return false
  return isNear(lengthMm, width) && isNear(widthMm, length) && !(isNear(lengthMm, length) && isNear(widthMm, width))
}

const isNear = (mm: number, expectedMm: number) => Math.abs(mm - expectedMm) <= farShare * expectedMm
const sideOf = (size: MeasuredSize, side: Side) => (side === 'length' ? size.lengthMm : size.widthMm)
const other = (side: Side): Side => (side === 'length' ? 'width' : 'length')
