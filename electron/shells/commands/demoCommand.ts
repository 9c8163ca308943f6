import type { Command } from './command.ts'
import { archiveJson, jsonLine } from './jsonLine.ts'
import { archiveOf, headsFile } from './ownArchive.ts'
import { programName } from './programName.ts'

export const demoCommand: Command = {
  name: 'demo',
  operands: '',
  summary: 'Fills a new archive with the demo study: an invented boatyard school, its adhesives and its breaks.',
  options: {},
  usesArchive: true,
  details: [
    'Every record says that it is invented. An archive that holds other specimens, or all of these, is left as',
    'it is (exit 1); one whose filling was stopped is filled up.',
    archiveJson,
  ],
  async run({ io, values, json }) {
    const { createDemoArchive } = await import('#engine/createDemoArchive.ts')
    const path = archiveOf(values, 'demo')
    const onProgress = ({ done, total }: { done: number; total: number }) => {
      if (io.interactive) io.err(`\rbroke ${done} of ${total} specimens`)
    }
    const { specimens, breaks } = await createDemoArchive(path, programName, headsFile(), onProgress, io.interrupt)
    if (io.interactive) io.err('\n')
    await io.out(
      json
        ? jsonLine({ archive: path, specimens, breaks })
        : `${path}: ${specimens} invented specimens, ${breaks} breaks\n`,
    )
    return 0
  },
}
