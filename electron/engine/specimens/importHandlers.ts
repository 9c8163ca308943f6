import { createHash } from 'node:crypto'
import { Trouble } from '#contract/errors.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import {
  type ImportAnswer,
  type importProcedures,
  importStopped,
  mostFatesListed,
  refuseLargeTable,
} from '#contract/specimens/importProcedures.ts'
import { lookAtSheet } from '#exchange/import/lookAtSheet.ts'
import { readSheetFile } from '#exchange/sheets/readSheetFile.ts'
import type { Bench } from '../bench/bench.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { type ImportOutcome, readImportTable, runImport, tryImport } from './importTable.ts'

/** No sample reaches the disk while blocks are stored: beyond so many a running capture would wait too long for it. */
const mostWhileLoading = 1000

/** Tables of past results: looked at, tried, brought in, and set aside again. */
export function importHandlers(
  { archive, clock, tasks, emit, demo }: HandlerParts,
  bench: Pick<Bench, 'state'>,
): HandlersOf<typeof importProcedures> {
  function refuseWhileLoading(blocks: number): void {
    if (blocks > mostWhileLoading && bench.state().phase === 'loading')
      throw new Trouble(
        'conflict',
        `A break is being recorded, and storing ${blocks} blocks would keep its samples from the disk.`,
        'Import when it has ended.',
      )
  }
  return {
    'imports.look': ({ name, content, sheet, headerRow, delimiter, encoding }) =>
      tasks.run('import', async (signal) => {
        const bytes = bytesOf(name, content)
        const said = { sheet, delimiter, encoding, headerRow: headerRow ?? 1 }
        const read = await readSheetFile(name, bytes, said, signal)
        return lookAtSheet(read, headerRow, createHash('sha256').update(bytes).digest('hex'), signal)
      }),
    'imports.try': ({ name, content, mapping }) =>
      tasks.run('import', async (signal) =>
        answerOf(await tryImport(archive, await readImportTable(name, bytesOf(name, content), mapping, signal))),
      ),
    'imports.run': async ({ name, content, mapping, by }) => {
      let stored: ImportAnswer | null = null
      try {
        return await tasks.run('import', async (signal) => {
          const table = await readImportTable(name, bytesOf(name, content), mapping, signal)
          refuseWhileLoading(table.rows.length)
          const said = { recordedAt: clock.instant(), by, demo: await demo.isOpen() }
          const outcome = await runImport(archive, table, said, (progress) => emit('task.progress', progress), signal)
          stored = answerOf(outcome)
          return stored
        })
      } catch (thrown) {
        // Stopped when all of it was stored already: that is what became of it
        if (stored !== null) return stored
        throw thrown instanceof Trouble && thrown.code === 'cancelled' ? importStopped() : thrown
      }
    },
    'imports.list': () => archive.importRuns(),
    'imports.decide': ({ importRunId, ...decision }) =>
      archive.decideImport(importRunId, { ...decision, recordedAt: clock.instant() }),
  }
}

function bytesOf(name: string, content: Uint8Array): Buffer {
  refuseLargeTable(name, content.length)
  return Buffer.from(content.buffer, content.byteOffset, content.byteLength)
}

function answerOf({ summary, fates }: ImportOutcome): ImportAnswer {
  return { summary, fates: fates.slice(0, mostFatesListed) }
}
