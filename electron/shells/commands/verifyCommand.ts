import { headText } from '#words/keeping/headWords.ts'
import { checkedWords, soundWords } from '#words/keeping/verifyWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { type Command, type CommandValues, UsageError } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { textOption } from './optionValues.ts'
import { archiveOf, headsFile } from './ownArchive.ts'
import { programName } from './programName.ts'

export const verifyCommand: Command = {
  name: 'verify',
  operands: '',
  summary: 'Checks the whole archive: database, chain of hashes, every curve against its checksum and peak.',
  options: {
    head: {
      type: 'string',
      value: 'COUNT:HASH',
      help: 'a head of the chain that was written down: the archive must hold it',
    },
    'accept-head': {
      type: 'boolean',
      help: 'takes the chain as it is from now on, when an older copy was put back on purpose',
    },
  },
  usesArchive: true,
  details: [
    'May run beside the program. Exit 1 when a fault was found.',
    'With --json: {sound, ledgerEntries, breaks, curves, samples, head: {count, hash, instant}, faults: [{where, what}]}.',
  ],
  async run({ io, values, json }) {
    const { verifyArchive } = await import('#engine/keeping/verifyArchive.ts')
    const onProgress = ({ done, total }: { done: number; total: number }) => {
      if (io.interactive) io.err(`\rchecked ${done} of ${total}`)
    }
    const heads = { keptIn: headsFile(), writtenDown: headOption(values), accept: values['accept-head'] === true }
    const report = await verifyArchive(archiveOf(values), programName, heads, onProgress, io.interrupt)
    if (io.interactive) io.err('\n')
    if (json) await io.out(jsonLine(report))
    else {
      for (const { where, what } of report.faults) await io.out(`${where}: ${what}\n`)
      if (report.head !== null) await io.out(`head of the chain: ${headText(report.head)}\n`)
      await io.out(`${plainText(`${checkedWords(report)}: ${soundWords(report)}`)}\n`)
    }
    return report.sound ? 0 : 1
  },
}

function headOption(values: CommandValues): { count: number; hash: string } | null {
  const text = textOption(values, 'head')
  if (text === undefined) return null
  const [, count, hash] = /^([1-9]\d{0,14}):([0-9a-f]{64})$/i.exec(text) ?? []
  if (count === undefined || hash === undefined) throw new UsageError('--head takes COUNT:HASH, as verify prints it')
  return { count: Number(count), hash: hash.toLowerCase() }
}
