import { countOf } from '#words/units/counts.ts'
import { plainText } from '#words/units/plainText.ts'
import type { Command } from './command.ts'
import { archiveJson, jsonLine } from './jsonLine.ts'
import { archiveOf } from './ownArchive.ts'
import { programName } from './programName.ts'

export const rebuildCommand: Command = {
  name: 'rebuild',
  operands: '',
  summary: 'Makes the lists of the archive again from its records, where verify finds that they differ.',
  options: {},
  usesArchive: true,
  details: ['No record is changed. Close the program first.', archiveJson],
  async run({ io, values, json }) {
    const { rebuildLists } = await import('#engine/keeping/rebuildLists.ts')
    const path = archiveOf(values)
    const onProgress = ({ done, total }: { done: number; total: number }) => {
      if (io.interactive) io.err(`\rlisted ${done} of ${total}`)
    }
    const { specimens, breaks } = await rebuildLists(path, programName, onProgress, io.interrupt)
    if (io.interactive) io.err('\n')
    const counted = plainText(`${countOf(specimens, 'specimen')} and ${countOf(breaks, 'break')}`)
    await io.out(
      json ? jsonLine({ archive: path, specimens, breaks }) : `${path}: the lists of ${counted} were made again\n`,
    )
    return 0
  },
}
