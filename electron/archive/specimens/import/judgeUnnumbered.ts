// Held by tests/archive/specimens/import/judgeImport.spec.ts.
import type { FateCause, ImportedFile, JudgedBlock, ReadBlock } from '#contract/specimens/importedResult.ts'
import type { Database } from '../../core/database.ts'
import { type ImportedBlock, unnumberedImports } from './knownBlocks.ts'
import { blockKey } from './sameBlock.ts'

const newBlock: JudgedBlock = { fate: 'new', cause: null, number: null, specimenId: null }

/**
 * Blocks that no number names. They are there already where the same file was imported and held them at the same place, or where
 * this file is one that was imported and has grown since: all that it gave then stands in it, or most at the same places. Equal
 * blocks are as many blocks as there are.
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
  const ownPlaces = new Map(own.map((one) => [placeOf(one), one]))
  for (const block of blocks) {
    const there = ownPlaces.get(placeOf(block))
    if (there !== undefined) judged.set(block, judgedAs('already-there', { kind: 'same-place' }, there))
  }
  // A block counts for one earlier file alone
  const open = () => blocks.filter((block) => judged.get(block) === newBlock)
  for (const earlier of sources.values())
    if (earlier !== own) for (const [block, fate] of judgedByEarlier(open(), earlier)) judged.set(block, fate)
  return judged
}

/** The fates that follow from an earlier file, if this one is the same grown; none otherwise. */
function judgedByEarlier(blocks: readonly ReadBlock[], earlier: readonly ImportedBlock[]): Map<ReadBlock, JudgedBlock> {
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

function judgedAs(fate: JudgedBlock['fate'], cause: FateCause, { specimenId, number }: ImportedBlock): JudgedBlock {
  return { fate, cause, specimenId, number }
}
