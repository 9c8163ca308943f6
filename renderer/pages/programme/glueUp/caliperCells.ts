import { type MeasuredSize, type Side, type SizeDoubt, sizeDoubts } from '#domain/programme/glueUp/sizeDoubts.ts'
import { readSize } from '#words/programme/readSize.ts'
import { type Quantities, quantitiesIn } from '#words/units/quantities.ts'
import { convertTyped } from '#words/units/typedQuantity.ts'

/** A measured side as it was typed, and in which units the program was then. */
export type CaliperCell = { text: string; typedIn: Quantities['system'] }
/** Cells by the key of their block and their side; one that is missing is empty. */
export type CaliperCells = Readonly<Record<string, CaliperCell>>

/** Under which a side of a block is kept. */
export function cellKey(blockKey: string, side: Side): string {
  return `${blockKey} ${side}`
}

/** What a cell shows in the units of now. */
export function shownIn(cell: CaliperCell | undefined, now: Quantities): string {
  if (cell === undefined) return ''
  return convertTyped(cell.text, quantitiesIn(cell.typedIn).length.unit, now.length.unit)
}

/** What a cell says, mm; nothing typed is null. */
export function readCell(cell: CaliperCell | undefined): { stored: number | null } | { error: string } {
  return cell === undefined ? { stored: null } : readSize(cell.text, quantitiesIn(cell.typedIn).length)
}

/** What is known of a block so far; a side that cannot be read is not known. */
export function sizeIn(cells: CaliperCells, blockKey: string): MeasuredSize {
  const mm = (side: Side) => {
    const read = readCell(cells[cellKey(blockKey, side)])
    return 'error' in read ? null : read.stored
  }
  return { lengthMm: mm('length'), widthMm: mm('width') }
}

/** Whether something is written of a block that is no length. */
export function isUnread(cells: CaliperCells, blockKey: string): boolean {
  return (['length', 'width'] as const).some((side) => 'error' in readCell(cells[cellKey(blockKey, side)]))
}

/** Length times width, mm2, without digits that nobody measured; null where a side is missing. */
export function areaOf({ lengthMm, widthMm }: MeasuredSize): number | null {
  return lengthMm === null || widthMm === null ? null : Number((lengthMm * widthMm).toPrecision(12))
}

/** The doubts about each block, in the order of the keys. */
export function doubtsIn(cells: CaliperCells, blockKeys: readonly string[], planned: MeasuredSize): SizeDoubt[][] {
  return sizeDoubts(
    blockKeys.map((key) => sizeIn(cells, key)),
    planned,
  )
}

/** Those of a block's doubts that are about the side that was just measured. */
export function doubtsAbout(doubts: readonly SizeDoubt[], side: Side): SizeDoubt[] {
  return doubts.filter((one) =>
    one.kind === 'swapped' ? side === 'width' : one.kind !== 'side-missing' && one.side === side,
  )
}

/** Where the next value goes after a side of a block: its width, then the next block's length; null: the table is full. */
export function cellAfter(
  blockKeys: readonly string[],
  blockKey: string,
  side: Side,
): { blockKey: string; side: Side } | null {
  if (side === 'length') return { blockKey, side: 'width' }
  const next = blockKeys[blockKeys.indexOf(blockKey) + 1]
  return next === undefined ? null : { blockKey: next, side: 'length' }
}

/**
 * Whether a value that came into a cell which had just been asked about is that of the cell after it: it can hardly be right here, and
 * fits there. Whoever measures then went on without looking up, and what is typed over here would shift every block by one. The
 * value that stands here already, sent once more, is the answer to the question.
 */
export function isOfNextCell(
  cells: CaliperCells,
  blockKeys: readonly string[],
  planned: MeasuredSize,
  here: { blockKey: string; side: Side },
  value: CaliperCell,
): boolean {
  const there = cellAfter(blockKeys, here.blockKey, here.side)
  const stands = cells[cellKey(here.blockKey, here.side)]
  if (there === null || 'error' in readCell(value) || stands?.text === value.text) return false
  const fitsIn = ({ blockKey, side }: typeof here) => {
    const doubts = doubtsIn({ ...cells, [cellKey(blockKey, side)]: value }, blockKeys, planned)
    return doubtsAbout(doubts[blockKeys.indexOf(blockKey)]!, side).length === 0
  }
  return !fitsIn(here) && fitsIn(there)
}
