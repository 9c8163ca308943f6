// Held by tests/archive/specimens/import/judgeImport.spec.ts.
import type { FateCause, ImportedFile, JudgedBlock, ReadBlock } from '#contract/specimens/importedResult.ts'
import type { Database } from '../../core/database.ts'
import { type ImportedBlock, unnumberedImports } from './knownBlocks.ts'
import { blockKey } from './sameBlock.ts'

const newBlock: JudgedBlock = { fate: 'new', cause: null, number: null, specimenId: null }

/**
 * Blocks that no number names. They are there already where the same file was imported and held them at the same place, or where
 * this file is one that was imported and has grown since: all that it gave then stands in it, or most at the same places. Equal
 * blocks are as many blocks as there are. What was set aside is there already where nothing changed, and else comes in anew.
 */
export function judgeUnnumbered(
  database: Database,
  file: ImportedFile,
  blocks: readonly ReadBlock[],
): Map<ReadBlock, JudgedBlock> {
  const judged = new Map(blocks.map((block) => [block, newBlock]))
  if (blocks.length === 0) return judged
  const sources = Map.groupBy(unnumberedImports(database), ({ fileSha256, sheet }) => `${fileSha256}\n${sheet ?? ''}`)
  const own = sources.get(`${file.fileSha256}\n${file.sheet ?? ''}`) ?? []
  const ownPlaces = newestByPlace(own)
  for (const block of blocks) {
    const there = ownPlaces.get(placeOf(block))
    if (there === undefined) continue
    judged.set(
      block,
      there.setAside ? judgedAnew(block, there) : judgedAs('already-there', { kind: 'same-place' }, there),
    )
  }
  // A block counts for one earlier file alone
  const open = () => blocks.filter((block) => judged.get(block) === newBlock)
  for (const earlier of sources.values())
    if (earlier !== own) for (const [block, fate] of judgedByEarlier(open(), earlier)) judged.set(block, fate)
  return judged
}

/** A file that was set aside and brought in again gave the same place twice. */
function newestByPlace(blocks: readonly ImportedBlock[]): Map<string, ImportedBlock> {
  return new Map(blocks.map((one) => [placeOf(one), one]))
}

/** A block whose earlier result was set aside: its specimen goes on where nothing else is known of that. */
function judgedAnew(block: ReadBlock, aside: ImportedBlock): JudgedBlock {
  if (blockKey(block.values) === blockKey(aside.values)) return judgedAs('already-there', { kind: 'set-aside' }, aside)
  return aside.open ? judgedAs('new', null, aside) : newBlock
}

/** The fates that follow from an earlier file of which something counts, if this one is the same grown; none otherwise. */
function judgedByEarlier(blocks: readonly ReadBlock[], given: readonly ImportedBlock[]): Map<ReadBlock, JudgedBlock> {
  const earlier = [...newestByPlace(given).values()]
  const counting = earlier.filter(({ setAside }) => !setAside)
  const grown = counting.length === 0 ? new Map<ReadBlock, JudgedBlock>() : judgedByCounting(blocks, counting)
  if (grown.size === 0) return grown
  const aside = earlier.filter(({ setAside }) => setAside)
  for (const [block, one] of paired(
    blocks.filter((block) => !grown.has(block)),
    aside,
  ))
    grown.set(block, judgedAnew(block, one))
  return grown
}

/** Blocks with the earlier ones that are equal to them, else with those at the same places. */
function paired(blocks: readonly ReadBlock[], earlier: readonly ImportedBlock[]): Map<ReadBlock, ImportedBlock> {
  const pairs = new Map<ReadBlock, ImportedBlock>()
  const used = new Set<ImportedBlock>()
  for (const nameOf of [(one: ReadBlock | ImportedBlock) => blockKey(one.values), placeOf]) {
    const waiting = Map.groupBy(
      earlier.filter((one) => !used.has(one)),
      nameOf,
    )
    for (const block of blocks) {
      const one = pairs.has(block) ? undefined : waiting.get(nameOf(block))?.shift()
      if (one === undefined) continue
      pairs.set(block, one)
      used.add(one)
    }
  }
  return pairs
}

function judgedByCounting(
  blocks: readonly ReadBlock[],
  earlier: readonly ImportedBlock[],
): Map<ReadBlock, JudgedBlock> {
  const waiting = new Map<string, ReadBlock[]>()
  for (const block of blocks) {
    const key = blockKey(block.values)
    const same = waiting.get(key)
    if (same === undefined) waiting.set(key, [block])
    else same.push(block)
  }
  const grown = new Map<ReadBlock, JudgedBlock>()
  for (const one of earlier) {
    const block = waiting.get(blockKey(one.values))?.shift()
    if (block !== undefined) grown.set(block, judgedAs('already-there', { kind: 'grown', fileName: one.fileName }, one))
  }
  if (grown.size === earlier.length) return grown
  const places = new Map(blocks.map((block) => [placeOf(block), block]))
  const atPlaces = new Map<ReadBlock, JudgedBlock>()
  let unchanged = 0
  for (const one of earlier) {
    const block = places.get(placeOf(one))
    if (block === undefined) continue
    const same = blockKey(block.values) === blockKey(one.values)
    if (same) unchanged++
    const cause: FateCause = { kind: same ? 'grown' : 'changed', fileName: one.fileName }
    atPlaces.set(block, judgedAs(same ? 'already-there' : 'rejected', cause, one))
  }
  return unchanged * 2 >= earlier.length ? atPlaces : new Map()
}

function placeOf({ row, column }: { row: number; column: string | null }): string {
  return `${row}\n${column ?? ''}`
}

function judgedAs(
  fate: JudgedBlock['fate'],
  cause: FateCause | null,
  { specimenId, number }: ImportedBlock,
): JudgedBlock {
  return { fate, cause, specimenId, number }
}
