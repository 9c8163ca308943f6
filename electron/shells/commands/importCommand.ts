import type { ImportFate } from '#contract/specimens/importedResult.ts'
import { coloursFoundWords } from '#words/specimens/import/colourWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { type Command, UsageError } from './command.ts'
import { jsonLine, jsonPage } from './jsonLine.ts'
import { byHelp, dryRunHelp, nameOption, proposeHelp, textOption } from './optionValues.ts'
import { archiveOf, headsFile } from './ownArchive.ts'
import { programName } from './programName.ts'

export const importCommand: Command = {
  name: 'import',
  operands: 'FILE',
  summary: 'Brings in a table of past results (CSV or XLSX) as a mapping says, all of it or nothing.',
  options: {
    map: { type: 'string', value: 'MAP.json', help: 'what the columns mean; the page "Import" makes and shows one' },
    propose: proposeHelp,
    'dry-run': dryRunHelp,
    by: byHelp,
  },
  usesArchive: true,
  details: [
    'Each block is new, already-there or rejected, with the reason in one sentence; nothing is guessed. Imported results have a',
    'peak alone: no curve, no verified range. The archive is made where there is none. A second import of a file adds nothing.',
    '',
    'With --json: per block {row, column, fate, reason, number, specimenId}; last {event: "imported", new, alreadyThere, rejected,',
    'emptyRows, fileSha256, dryRun}. Exit 0: the file was read to its end; 1: it was not, and nothing was stored.',
  ],
  async run({ io, values, positionals, json }) {
    if (values.propose === true) {
      const { proposeImport } = await import('#engine/importFile.ts')
      const { mapping, fills } = await proposeImport(positionals[0]!)
      await io.out((json ? jsonLine : jsonPage)(mapping))
      if (fills.length > 0) io.err(`${plainText(coloursFoundWords(fills))}\n`)
      return 0
    }
    const mapFile = textOption(values, 'map')
    if (mapFile === undefined) throw new UsageError('"import" needs --map MAP.json; --propose prints one.')
    const { importFile } = await import('#engine/importFile.ts')
    const { fates, summary } = await importFile(
      {
        file: positionals[0]!,
        mapFile,
        archive: archiveOf(values),
        by: nameOption(values, 'by') ?? null,
        dryRun: values['dry-run'] === true,
      },
      programName,
      headsFile(),
      ({ done, total }) => {
        if (io.interactive) io.err(`\rstored ${done} of ${total} blocks`)
      },
      io.interrupt,
    )
    if (io.interactive && !summary.dryRun) io.err('\n')
    for (let from = 0; from < fates.length; from += 500) {
      const some = fates.slice(from, from + 500)
      const text = json
        ? some.map((fate) => jsonLine(fate)).join('')
        : some
            .filter(({ fate, reason }) => fate !== 'new' || reason !== null)
            .map(fateText)
            .join('')
      if (text !== '' && !(await io.out(json ? text : plainText(text)))) return 0
    }
    await io.out(json ? jsonLine({ event: 'imported', ...summary }) : `${summaryText(summary)}\n`)
    return 0
  },
}

/** Reasons name their row, remarks on what was taken do not. */
function fateText({ row, column, fate, reason }: ImportFate): string {
  const said = reason ?? ''
  const where = said.startsWith(`Row ${row}`) ? '' : `Row ${row}${column === null ? '' : `, ${column}`}: `
  return `${fate}: ${where}${said}\n`
}

function summaryText(summary: {
  new: number
  alreadyThere: number
  rejected: number
  emptyRows: number
  dryRun: boolean
}) {
  const { alreadyThere, rejected, emptyRows, dryRun } = summary
  return `${summary.new} ${dryRun ? 'would be new' : 'new'}, ${alreadyThere} there already, ${rejected} rejected, ${emptyRows} empty rows`
}
