import {
  type BlockState,
  blockStates,
  mostBlocks,
  type Overview,
  type OverviewCell,
  type OverviewFilter,
} from '#contract/findings/overview.ts'
import { naturalKey } from '../../text/naturalOrder.ts'
import { hasTraits, isAmong } from '../traitsFilter.ts'

/** A block as an archive holds it. */
export type OverviewBlock = Omit<OverviewCell, 'blocks'> & {
  readonly number: string
  /** null: not glued yet. */
  readonly specimenId: number | null
  readonly breakId: number | null
  readonly state: BlockState
  readonly strengthMPa: number | null
  readonly woodFailurePercent: number | null
  readonly simulated: boolean
}

/**
 * Blocks as cells and columns: what was made alike, whatever the case and accents of the names, under the name of the first; no
 * more than `most` blocks, whole cells of them. Checked: tests/domain/findings/overview/overviewOf.spec.ts.
 */
export function overviewOf(
  blocks: readonly OverviewBlock[],
  filter: Omit<OverviewFilter, 'studyId'>,
  most: number = mostBlocks,
): Overview {
  const cells = cellsOf(blocks)
  const chosen = cells.filter((cell) => hasTraits(cell, filter) && isAmong(filter.agesMonths, cell.ageMonths))
  const shown: Cell[] = []
  let count = 0
  for (const cell of chosen) {
    if (count + cell.blocks.length > most && shown.length > 0) break
    shown.push(cell)
    count += cell.blocks.length
  }
  const listed = shown.flatMap((cell) => inOrder(cell.blocks))
  const column = (of: (block: OverviewBlock) => number | null, none: number) =>
    Float64Array.from(listed, (block) => of(block) ?? none)
  return {
    cells: shown.map(({ key: _key, blocks: of, ...traits }) => ({ ...traits, blocks: of.length })),
    numbers: listed.map(({ number }) => number),
    specimenIds: column(({ specimenId }) => specimenId, 0),
    breakIds: column(({ breakId }) => breakId, 0),
    states: Uint8Array.from(listed, ({ state }) => blockStates.indexOf(state)),
    strengthsMPa: column(({ strengthMPa }) => strengthMPa, Number.NaN),
    woodFailurePercents: column(({ woodFailurePercent }) => woodFailurePercent, Number.NaN),
    blocks: chosen.reduce((sum, cell) => sum + cell.blocks.length, 0),
    simulated: listed.filter(({ simulated }) => simulated).length,
    levels: {
      adhesives: levels(cells, ({ adhesive }) => adhesive),
      jointTypes: levels(cells, ({ jointType }) => jointType),
      bondLineGapsMm: levels(cells, ({ bondLineGapMm }) => bondLineGapMm),
      exposures: levels(cells, ({ exposure }) => exposure),
      agesMonths: levels(cells, ({ ageMonths }) => ageMonths),
    },
  }
}

type Cell = Omit<OverviewCell, 'blocks'> & { key: readonly (string | number)[]; blocks: OverviewBlock[] }

/** What is not known comes last. */
const last = Number.POSITIVE_INFINITY

function cellsOf(blocks: readonly OverviewBlock[]): Cell[] {
  const [adhesives, jointTypes, exposures] = [spellings(), spellings(), spellings()]
  const cells = new Map<string, Cell>()
  for (const block of blocks) {
    const adhesive = adhesives.keyOf(block.adhesive)
    const jointType = jointTypes.keyOf(block.jointType)
    const exposure = exposures.keyOf(block.exposure)
    const { bondLineGapMm, ageMonths } = block
    const id = `${adhesive}\n${jointType}\n${bondLineGapMm}\n${exposure}\n${ageMonths}`
    const known = cells.get(id)
    if (known !== undefined) {
      known.blocks.push(block)
      continue
    }
    cells.set(id, {
      adhesive: adhesives.nameOf(adhesive),
      jointType: jointTypes.nameOf(jointType),
      bondLineGapMm,
      exposure: exposures.nameOf(exposure),
      ageMonths,
      key: [adhesive, jointType, bondLineGapMm ?? last, exposure, ageMonths ?? last],
      blocks: [block],
    })
  }
  return [...cells.values()].sort((one, other) => compared(one.key, other.key))
}

/** The spellings of a trait: names with one key are one, as it was written first. */
function spellings() {
  const keys = new Map<string, string>()
  const names = new Map<string, string>()
  return {
    keyOf(name: string): string {
      const known = keys.get(name)
      if (known !== undefined) return known
      const key = naturalKey(name)
      keys.set(name, key)
      if (!names.has(key)) names.set(key, name)
      return key
    },
    nameOf: (key: string): string => names.get(key)!,
  }
}

function compared(one: readonly (string | number)[], other: readonly (string | number)[]): number {
  for (const [at, value] of one.entries()) {
    if (value < other[at]!) return -1
    if (value > other[at]!) return 1
  }
  return 0
}

const most = Number.MAX_VALUE

/** Those with a strength first, weakest first; the others as they come. */
function inOrder(blocks: readonly OverviewBlock[]): OverviewBlock[] {
  return blocks.toSorted((one, other) => (one.strengthMPa ?? most) - (other.strengthMPa ?? most))
}

/** What occurs, each once, in the order in which people count. */
function levels<Value extends string | number | null>(cells: readonly Cell[], of: (cell: Cell) => Value): Value[] {
  const key = (value: Value) => (typeof value === 'string' ? naturalKey(value) : (value ?? last))
  return [...new Set(cells.map(of))].sort((one, other) => compared([key(one)], [key(other)]))
}
