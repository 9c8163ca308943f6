import { createHash } from 'node:crypto'
import { Trouble } from '#contract/errors.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import {
  type ImportAnswer,
  type importProcedures,
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
    'imports.run': ({ name, content, mapping, by }) =>
      tasks.run('import', async (signal) => {
        const table = await readImportTable(name, bytesOf(name, content), mapping, signal)
        if (table.rows.length > mostWhileLoading && bench.state().phase === 'loading')
          throw new Trouble(
            'conflict',
            `A break is being recorded, and storing ${table.rows.length} blocks would keep its samples from the disk.`,
            'Import when it has ended.',
          )
        const said = { recordedAt: clock.instant(), by, demo: await demo.isOpen() }
        return answerOf(await runImport(archive, table, said, (progress) => emit('task.progress', progress), signal))
      }),
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
