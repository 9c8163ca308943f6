import { useRef, useState } from 'react'
import type { MeasuredSize, Side } from '#domain/programme/glueUp/sizeDoubts.ts'
import { writeCount } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { type CaliperBlock, CaliperRow, type CellActions, type EnteredCell } from './CaliperRow.tsx'
import {
  type CaliperCell,
  type CaliperCells,
  cellAfter,
  cellKey,
  doubtsAbout,
  doubtsIn,
  isOfNextCell,
  readCell,
  shownIn,
} from './caliperCells.ts'
import './caliperTable.css'

/** A shorter number may just as well be a size. */
const shortestScanned = 3

/**
 * The sizes of the blocks in one pass: a value and Enter, as calipers with a cable send it, and the next cell has the focus. A
 * doubtful value keeps the focus once, marked to be typed over; Enter again takes it as it is, and another value that fits the next
 * cell alone goes there. A block's number typed or scanned into a cell leads to its row.
 */
export function CaliperTable({
  blocks,
  cells,
  planned,
  onCells,
}: {
  blocks: readonly CaliperBlock[]
  cells: CaliperCells
  planned: MeasuredSize
  onCells(cells: CaliperCells): void
}) {
  const quantities = useQuantities()
  const table = useRef<HTMLTableElement>(null)
  /** The cell that was asked about, with the text for which it was. */
  const [asked, setAsked] = useState<{ key: string; text: string } | null>(null)
  const keys = blocks.map(({ key }) => key)
  const doubts = doubtsIn(cells, keys, planned)

  function focus({ blockKey, side }: { blockKey: string; side: Side }): void {
    const input = table.current?.querySelector<HTMLInputElement>(`[data-cell="${CSS.escape(cellKey(blockKey, side))}"]`)
    input?.focus()
    input?.select()
  }

  /** The cells with what stands in one of them now; the same ones where that is what stood there. */
  function withText(key: string, text: string): CaliperCells {
    const cell: CaliperCell = { text: text.trim(), typedIn: quantities.system }
    const { [key]: before, ...others } = cells
    if (cell.text === '') return before === undefined ? cells : others
    return before !== undefined && shownIn(before, quantities) === cell.text ? cells : { ...cells, [key]: cell }
  }

  function keep(blockKey: string, side: Side, text: string): void {
    const next = withText(cellKey(blockKey, side), text)
    if (next !== cells) onCells(next)
  }

  function enter(block: CaliperBlock, side: Side, text: string): EnteredCell {
    const key = cellKey(block.key, side)
    const next = withText(key, text)
    const isWrong = 'error' in readCell(next[key])
    const isDoubtful = doubtsAbout(doubtsIn(next, keys, planned)[keys.indexOf(block.key)]!, side).length > 0
    const scanned = blocks.find(({ number }) => number.length >= shortestScanned && number === text.trim())
    if (scanned !== undefined && isDoubtful) {
      focus({ blockKey: scanned.key, side: 'length' })
      return 'scanned'
    }
    const after = cellAfter(keys, block.key, side)
    const value: CaliperCell = { text: text.trim(), typedIn: quantities.system }
    if (
      after !== null &&
      asked?.key === key &&
      isOfNextCell(cells, keys, planned, { blockKey: block.key, side }, value)
    ) {
      onCells({ ...cells, [cellKey(after.blockKey, after.side)]: value })
      focus(cellAfter(keys, after.blockKey, after.side) ?? after)
      return 'moved'
    }
    if (next !== cells) onCells(next)
    if (isWrong || (isDoubtful && (asked?.key !== key || asked.text !== text))) {
      setAsked({ key, text })
      return 'asked'
    }
    if (after !== null) focus(after)
    return 'kept'
  }

  const onCell = useSteadyActions({
    keep,
    enter,
    move(at, side, by) {
      const other = keys[at + by]
      if (other !== undefined) focus({ blockKey: other, side })
    },
  })
  const measured = keys.filter((key) => cells[cellKey(key, 'length')] && cells[cellKey(key, 'width')]).length
  return (
    <div className="caliper">
      <p className="caliper-count" role="status">
        {writeCount(measured)} of {writeCount(blocks.length)} measured
      </p>
      <table ref={table} className="caliper-table" aria-label="Sizes of the blocks">
        <CaliperHead />
        <tbody>
          {blocks.map((block, at) => (
            <CaliperRow
              key={block.key}
              block={block}
              length={cells[cellKey(block.key, 'length')]}
              width={cells[cellKey(block.key, 'width')]}
              at={at}
              doubts={doubts[at]!}
              onCell={onCell}
            />
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** The actions of now, as the same object for every drawing, so that a row is drawn again only where something of it changed. */
function useSteadyActions(now: CellActions): CellActions {
  const actions = useRef(now)
  actions.current = now
  const [steady] = useState<CellActions>(() => ({
    keep: (...cell) => actions.current.keep(...cell),
    enter: (...cell) => actions.current.enter(...cell),
    move: (...to) => actions.current.move(...to),
  }))
  return steady
}

function CaliperHead() {
  const { length, area } = useQuantities()
  return (
    <thead>
      <tr>
        <th scope="col">Block</th>
        <th scope="col">Group</th>
        <th scope="col">
          Length<span className="caliper-unit"> {length.unit}</span>
        </th>
        <th scope="col">
          Width<span className="caliper-unit"> {length.unit}</span>
        </th>
        <th scope="col" className="numeric">
          Area<span className="caliper-unit"> {area.unit}</span>
        </th>
      </tr>
    </thead>
  )
}
