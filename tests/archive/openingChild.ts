import { openArchive } from '#archive/openArchive.ts'
import { troubleFrom } from '#contract/errors.ts'

// Opens the archive named on its command line and prints how many breaks it holds, or what stood in the way.

const [, , path = '', mode] = process.argv
try {
  const archive = await openArchive({ path, program: 'breakledger test', mode: mode === 'read' ? 'read' : 'write' })
  process.stdout.write(String((await archive.info()).breaks))
  await archive.close()
} catch (thrown) {
  const { code, message } = troubleFrom(thrown)
  process.stdout.write(`${code}: ${message}`)
}
