import type { Handlers } from '#contract/procedures.ts'
import type { ImportedRow, JudgedBlock } from '#contract/specimens/importedResult.ts'
import type { ImportMapping } from '#contract/specimens/importMapping.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import type { ImportRunSummary } from '#contract/specimens/typedResult.ts'
import { readImportTable } from '#engine/specimens/importTable.ts'
import { importFates, importSummary } from '#exchange/import/fates.ts'
import { lookAtSheet } from '#exchange/import/lookAtSheet.ts'
import { readSheetFile } from '#exchange/sheets/readSheetFile.ts'
import { at } from './scriptedRecords.ts'

type Scripted = Pick<Handlers, 'imports.look' | 'imports.try' | 'imports.run' | 'imports.list' | 'numbers.list'>

/** Files are read as the program reads them; every block of one is new the first time. */
export function scriptedImports(specimens: () => readonly SpecimenSummary[]): Scripted {
  const runs: ImportRunSummary[] = [
    run(1, { fileName: 'breaks 2019 to 2024, loft and bilge.xlsx', results: 1163, inUse: 1163 }),
    run(2, { fileName: 'trial.csv', results: 24, inUse: 0 }),
  ]
  const asked = async (name: string, content: Uint8Array, mapping: ImportMapping, dryRun: boolean) => {
    const { rows, emptyRows, file } = await readImportTable(name, Buffer.from(content), mapping)
    const isThere = runs.some(({ fileSha256 }) => fileSha256 === file.fileSha256)
    const judged = rows.flatMap((row) => (row.outcome === 'read' ? [judgedAs(row, isThere)] : []))
    const fates = importFates(rows, judged, dryRun)
    return { fates, summary: importSummary(fates, { emptyRows, fileSha256: file.fileSha256 }, dryRun) }
  }
  return {
    'imports.look': async ({ name, content, sheet, headerRow, delimiter, encoding }) => {
      const said = { sheet, delimiter, encoding, headerRow: headerRow ?? 1 }
      return lookAtSheet(await readSheetFile(name, Buffer.from(content), said), headerRow, 'a5'.repeat(32))
    },
    'imports.try': ({ name, content, mapping }) => asked(name, content, mapping, true),
    'imports.run': async ({ name, content, mapping, by }) => {
      const answer = await asked(name, content, mapping, false)
      const { new: results, fileSha256 } = answer.summary
      runs.unshift({ ...run(runs.length + 1, { fileName: name, results, inUse: results }), by, fileSha256 })
      return answer
    },
    'imports.list': async () => runs,
    'numbers.list': async ({ numbers }) =>
      numbers.map((number) => {
        const found = specimens().find(({ fields }) => fields.number === number)
        if (found === undefined)
          return {
            ...{ number, areaMm2: null, timesBroken: 0 },
            found: { kind: 'none', wrongCheck: false, nearest: ['C1-LL-01'] },
          }
        const { specimenId, fields, timesBroken } = found
        return { number, areaMm2: fields.areaMm2, timesBroken, found: { kind: 'specimen', specimenId, number } }
      }),
  }
}

function run(importRunId: number, change: Pick<ImportRunSummary, 'fileName' | 'results' | 'inUse'>): ImportRunSummary {
  return {
    importRunId,
    recordedAt: at(importRunId),
    by: 'bench 1',
    fileSha256: 'c0'.repeat(32),
    mapping: {},
    ...change,
  }
}

function judgedAs({ values }: Extract<ImportedRow, { outcome: 'read' }>, isThere: boolean): JudgedBlock {
  const { number } = values
  return isThere
    ? { fate: 'already-there', cause: { kind: 'same-place' }, number, specimenId: 1 }
    : { fate: 'new', cause: null, number, specimenId: null }
}
