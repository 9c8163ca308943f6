import { createHash } from 'node:crypto'
import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { FindingChanges, FindingsSettings, KeptBlock, KeptFindingRow } from '#contract/findings/keptFinding.ts'
import { findingsFilter } from '#contract/findings/procedures.ts'
import { type BlockChoice, blocksAsked, choiceOf } from '#domain/findings/askedBlocks.ts'
import { blockChanges, keptBlocksOf } from '#domain/findings/blockChanges.ts'
import type { ObservedBreak } from '#domain/findings/observedBreak.ts'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import { askedResults } from './askedResults.ts'

type Reader = Pick<ArchiveReader, 'observations' | 'keptFindings' | 'keptFinding'>

/** The results that a question rests on, as they were at one moment, and the hash of them. */
export type RestsOn = { blocks: KeptBlock[]; dataSha256: string }

/** Tells what each question rests on, all of one moment; found once for all that choose the same results. */
export function resultsNow(archive: Pick<Reader, 'observations'>): (settings: FindingsSettings) => RestsOn {
  const all = archive.observations()
  const known = new Map<string, RestsOn>()
  return (settings) => {
    const choice = choiceOf(settings)
    const key = JSON.stringify(choice)
    const found = known.get(key) ?? restsOn(all, choice)
    known.set(key, found)
    return found
  }
}

function restsOn(all: readonly ObservedBreak[], choice: BlockChoice): RestsOn {
  const { blocks, groups } = askedResults(all, findingsFilter.parse(choice.filter))
  const kept = keptBlocksOf(blocksAsked(choice, blocks, groups))
  return { blocks: kept, dataSha256: createHash('sha256').update(canonicalJson(kept)).digest('hex') }
}

/** What changed since a finding was kept. */
export function changesSince(
  archive: Pick<Reader, 'observations' | 'keptFinding'>,
  keptFindingId: number,
): FindingChanges {
  const { settings, blocks } = archive.keptFinding(keptFindingId).fields
  return blockChanges(blocks, resultsNow(archive)(settings).blocks)
}

/** Every finding on the list, and whether it still rests on what it did: hashes say that, no result is compared. */
export function keptRows(archive: Pick<Reader, 'observations' | 'keptFindings'>) {
  const { rows, ...unreadable } = archive.keptFindings()
  if (rows.length === 0) return { rows: [], ...unreadable }
  const restsNowOn = resultsNow(archive)
  return {
    rows: rows.map(
      (row): KeptFindingRow => ({
        ...row,
        isStale: restsNowOn(row.settings).dataSha256 !== row.dataSha256,
      }),
    ),
    ...unreadable,
  }
}
