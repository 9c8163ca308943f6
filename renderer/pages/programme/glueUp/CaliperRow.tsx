import { type KeyboardEvent, memo, useEffect, useRef, useState } from 'react'
import type { Side, SizeDoubt } from '#domain/programme/glueUp/sizeDoubts.ts'
import { sizeDoubtWords } from '#words/programme/sizeWords.ts'
import { areaQuestion } from '#words/specimens/plausibleWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { areaOf, type CaliperCell, cellKey, readCell, shownIn, sizeIn } from './caliperCells.ts'

/** A block of the table. */
export type CaliperBlock = {
  key: string
  /** '': it gets a short number when it is stored. */
  number: string
  /** What tells its group from others. */
  words: string
}

/**
 * What came of Enter in a cell: its value is kept and the focus is on the next one; it is asked about or wrong, and keeps the focus;
 * it was the number of a block, whose row has the focus now; or it was the value of the next cell, and stands there.
 */
export type EnteredCell = 'kept' | 'asked' | 'scanned' | 'moved'

/** What a cell does with what is typed into it. */
export type CellActions = {
  keep(blockKey: string, side: Side, text: string): void
  enter(block: CaliperBlock, side: Side, text: string): EnteredCell
  /** Goes to the same side of the row so many further down. */
  move(at: number, side: Side, by: number): void
}

type RowParts = {
  block: CaliperBlock
  at: number
  length: CaliperCell | undefined
  width: CaliperCell | undefined
  doubts: readonly SizeDoubt[]
  onCell: CellActions
}

/** The line of one block: both sides, their area, and what is asked about them. */
export const CaliperRow = memo(
  DrawnRow,
  (a, b) =>
    a.block.key === b.block.key &&
    a.block.number === b.block.number &&
    a.block.words === b.block.words &&
    a.at === b.at &&
    a.length === b.length &&
    a.width === b.width &&
    JSON.stringify(a.doubts) === JSON.stringify(b.doubts),
)

function DrawnRow({ block, at, length, width, doubts, onCell }: RowParts) {
  const quantities = useQuantities()
  const cells = {
    ...(length === undefined ? {} : { [cellKey(block.key, 'length')]: length }),
    ...(width === undefined ? {} : { [cellKey(block.key, 'width')]: width }),
  }
  const size = sizeIn(cells, block.key)
  const areaMm2 = areaOf(size)
  const errors = [length, width].flatMap((cell) => {
    const read = readCell(cell)
    return 'error' in read ? [read.error] : []
  })
  const asks = doubts.map((doubt) => sizeDoubtWords(doubt, quantities.length))
  const ofArea = doubts.length > 0 ? null : areaQuestion({ ...size, areaMm2 }, quantities.area)
  const said = [...errors, ...asks, ...(ofArea === null ? [] : [ofArea])]
  const about = `said-${block.key}`
  const bind = (side: Side, cell: CaliperCell | undefined) => ({
    ...{ block, at, side, cell, onCell },
    saidId: said.length === 0 ? undefined : about,
    isWrong: 'error' in readCell(cell),
  })
  return (
    <>
      <tr>
        <th scope="row">{block.number === '' ? <span className="quiet">short number</span> : block.number}</th>
        <td className="caliper-words">{block.words}</td>
        <td data-wrong={'error' in readCell(length) ? '' : undefined}>
          <CellInput {...bind('length', length)} />
        </td>
        <td data-wrong={'error' in readCell(width) ? '' : undefined}>
          <CellInput {...bind('width', width)} />
        </td>
        <td className="numeric">{areaMm2 === null ? '' : quantities.area.number(areaMm2)}</td>
      </tr>
      {said.length === 0 ? null : (
        <tr className="caliper-said">
          <td colSpan={5} id={about} role="status" data-error={errors.length > 0 ? '' : undefined}>
            {said.join(' ')}
          </td>
        </tr>
      )}
    </>
  )
}

function CellInput({
  block,
  at,
  side,
  cell,
  saidId,
  isWrong,
  onCell,
}: Pick<RowParts, 'block' | 'at' | 'onCell'> & {
  side: Side
  cell: CaliperCell | undefined
  saidId: string | undefined
  isWrong: boolean
}) {
  const quantities = useQuantities()
  const kept = shownIn(cell, quantities)
  const [typed, setTyped] = useState(kept)
  useEffect(() => setTyped(kept), [kept])
  /** The focus leaves while Enter is dealt with, which keeps the value itself. */
  const isEntering = useRef(false)

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key]
    if (by !== undefined) {
      event.preventDefault()
      onCell.move(at, side, by)
    }
    if (event.key !== 'Enter') return
    event.preventDefault()
    event.stopPropagation()
    isEntering.current = true
    const came = onCell.enter(block, side, typed)
    isEntering.current = false
    if (came === 'asked') event.currentTarget.select()
    if (came === 'scanned' || came === 'moved') setTyped(kept)
  }

  return (
    <input
      data-cell={cellKey(block.key, side)}
      aria-label={`${side === 'length' ? 'Length' : 'Width'} of ${block.number === '' ? 'a block' : block.number}, in ${quantities.length.unit}`}
      aria-invalid={isWrong ? true : undefined}
      aria-describedby={saidId}
      autoComplete="off"
      value={typed}
      onChange={(event) => setTyped(event.currentTarget.value)}
      onBlur={() => !isEntering.current && typed !== kept && onCell.keep(block.key, side, typed)}
      onKeyDown={onKeyDown}
    />
  )
}
