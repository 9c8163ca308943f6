import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
const folder = mkdtempSync(join(tmpdir(), 'breakledger-readme-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** The words of an example of README.md after the program's name, and what it says that they print. */
function exampleOf(command: string): { words: string[]; printed: string } {
  const found = new RegExp(`^\\$ npm run --silent breakledger -- (${command} .*)\n([^$\`]*)`, 'm').exec(readme)
  if (found === null) throw new Error(`README.md has no example of ${command}`)
  const words = [...found[1]!.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!)
  return { words, printed: found[2]! }
}

// Both read a sample alone, so that they print the same on every machine; the other examples go by the clock.
describe('README.md', () => {
  it.each(['calibrate', 'evaluate'])('shows what %s prints', async (command) => {
    const { words, printed } = exampleOf(command)
    const own = words.map((word) => (word.endsWith('.breakledger') ? join(folder, word) : word))
    const { code, out, err } = await runWords(commands, own)
    expect({ code, err, out: out.trimEnd() }).toEqual({ code: 0, err: '', out: printed.trimEnd() })
  })
})
