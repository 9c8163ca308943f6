// Held by tests/shells/commands/verifyCommand.spec.ts.
import type { Command } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { archiveOf } from './ownArchive.ts'

export const repairCommand: Command = {
  name: 'repair',
  operands: '',
  summary: 'Writes the texts of tables, indexes and triggers again, where verify finds that they differ.',
  options: {},
  usesArchive: true,
  details: [
    'Keeps a copy of the file first. No record is changed; check with verify afterwards. Close the program first.',
    'Exit 1 when something is left that is no matter of texts. With --json: {archive, copy, mended, left}.',
  ],
  async run({ io, values, json }) {
    const { repairArchive } = await import('#engine/keeping/repairArchive.ts')
    const path = archiveOf(values)
    const { copy, mended, left } = repairArchive(path)
    if (json) await io.out(jsonLine({ archive: path, copy, mended, left }))
    else {
      for (const name of mended) await io.out(`${name}: mended\n`)
      for (const name of left) await io.out(`${name}: left as it is\n`)
      await io.out(copy === null ? `${path}: nothing was to be mended\n` : `${path}: mended; as it was: ${copy}\n`)
    }
    return left.length === 0 ? 0 : 1
  },
}
