import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Command, CommandIo } from '#shells/commands/command.ts'
import { runCommandLine } from '#shells/commands/runCommandLine.ts'

// What a command keeps for its user is not to lie among what this user keeps.
process.env.XDG_DATA_HOME = join(tmpdir(), 'breakledger-test-data')

/** Runs a command line in this process and keeps what it wrote. */
export async function runWords(
  commands: readonly Command[],
  words: readonly string[],
  interrupt: AbortSignal = new AbortController().signal,
): Promise<{ code: number; out: string; err: string; lines: Record<string, unknown>[] }> {
  let out = ''
  let err = ''
  const io: CommandIo = {
    out: async (text) => {
      out += text
      return true
    },
    err: (text) => {
      err += text
    },
    interrupt,
    lost: () => null,
    interactive: false,
  }
  const code = await runCommandLine(commands, words, io)
  return {
    code,
    out,
    err,
    get lines() {
      return out
        .split('\n')
        .filter((line) => line !== '')
        .map((line) => JSON.parse(line) as Record<string, unknown>)
    },
  }
}
