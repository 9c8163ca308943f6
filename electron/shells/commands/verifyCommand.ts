import { checkedWords, soundWords } from '#words/keeping/verifyWords.ts'
import { plainText } from '#words/units/plainText.ts'
import type { Command } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { archiveOf } from './ownArchive.ts'
import { programName } from './programName.ts'

export const verifyCommand: Command = {
  name: 'verify',
  operands: '',
  summary: 'Checks the whole archive: database, chain of hashes, every curve against its checksum and peak.',
  options: {},
  usesArchive: true,
  details: [
    'May run beside the program. Exit 1 when a fault was found.',
    'With --json: {sound, ledgerEntries, breaks, curves, samples, faults: [{where, what}]}.',
  ],
  async run({ io, values, json }) {
    const { verifyArchive } = await import('#engine/keeping/verifyArchive.ts')
    const onProgress = ({ done, total }: { done: number; total: number }) => {
      if (io.interactive) io.err(`\rchecked ${done} of ${total}`)
    }
    const report = await verifyArchive(archiveOf(values), programName, onProgress, io.interrupt)
    if (io.interactive) io.err('\n')
    if (json) await io.out(jsonLine(report))
    else {
      for (const { where, what } of report.faults) await io.out(`${where}: ${what}\n`)
      await io.out(`${plainText(`${checkedWords(report)}: ${soundWords(report)}`)}\n`)
    }
    return report.sound ? 0 : 1
  },
}
