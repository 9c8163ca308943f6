import type { FateCause, ImportedFile, JudgedBlock, ReadBlock } from '#contract/specimens/importedResult.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import type { Database } from '../../core/database.ts'
import { judgeUnnumbered } from './judgeUnnumbered.ts'
import { hasTypedResult, type KnownBlock, specimenFinder } from './knownBlocks.ts'
import { otherField, otherResult } from './sameBlock.ts'

/**
 * What becomes of the blocks of a table, in their order, each judged as if those before it were stored: new, there already, or
 * rejected because the archive or the table itself says otherwise. Stores nothing.
 */
export function judgeImport(database: Database, file: ImportedFile, blocks: readonly ReadBlock[]): JudgedBlock[] {
  const find = specimenFinder(database)
  const before = new Map<string, ReadBlock>()
  const unnumbered = judgeUnnumbered(
    database,
    file,
    blocks.filter(({ values }) => values.number === null),
  )
  return blocks.map((block) => {
    const { number } = block.values
    if (number === null) return unnumbered.get(block)!
    const earlier = before.get(folded(number))
    if (earlier !== undefined) {
      const same =
        otherField(block.values, earlier.values) === null && otherResult(block.values, earlier.values) === null
      return judged(same ? 'already-there' : 'rejected', { kind: 'number-twice', row: earlier.row, same }, number)
    }
    const made = judgeNumbered(find, block, number)
    if (made.fate !== 'rejected') before.set(folded(number), block)
    return made
  })
}

function judgeNumbered(find: ReturnType<typeof specimenFinder>, { values }: ReadBlock, number: string): JudgedBlock {
  const known = find(number)
  if (known === null) return judged('new', null, number)
  const { specimenId } = known
  const field = otherField(values, known.blocks[0]!.values)
  if (field !== null && !known.open) return judged('rejected', { kind: 'other-value', field }, number, specimenId)
  const [results, aside] = [false, true].map((isAside) =>
    known.blocks.filter((one) => hasTypedResult(one) && one.setAside === isAside),
  ) as [KnownBlock[], KnownBlock[]]
  const isSame = (one: KnownBlock) => otherResult(values, one.values) === null
  if (results.some(isSame)) return judged('already-there', { kind: 'same-number' }, number, specimenId)
  if (results.length > 0 || known.broken) return judged('rejected', { kind: 'other-result' }, number, specimenId)
  if (field === null && aside.some(isSame)) return judged('already-there', { kind: 'set-aside' }, number, specimenId)
  return judged('new', null, number, specimenId)
}

function judged(
  fate: JudgedBlock['fate'],
  cause: FateCause | null,
  number: string,
  specimenId: number | null = null,
): JudgedBlock {
  return { fate, cause, number, specimenId }
}
