import { type ChildProcess, spawn } from 'node:child_process'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'

const main = fileURLToPath(new URL('../../electron/shells/start/command.ts', import.meta.url))

/** A command in a process of its own, as a person would start it. */
export type CommandProcess = {
  child: ChildProcess
  /** The objects on stdout so far. */
  lines: Record<string, unknown>[]
  errors(): string
  /** The next object (or one that came already) for which the test holds; rejects when the process ends without it. */
  until(test: (line: Record<string, unknown>) => boolean): Promise<Record<string, unknown>>
  /** Exit code, or the signal's name. */
  ended: Promise<number | string>
}

/** Starts `breakledger WORDS --json`; `environment` is added to that of this process. */
export function startCommand(words: readonly string[], environment: Record<string, string> = {}): CommandProcess {
  const child = spawn(process.execPath, [main, ...words, '--json'], {
    stdio: ['ignore', 'pipe', 'pipe'],
    // What a command keeps for its user is not to lie among what this user keeps.
    env: { ...process.env, XDG_DATA_HOME: join(tmpdir(), 'breakledger-test-data'), ...environment },
  })
  const lines: Record<string, unknown>[] = []
  const watchers = new Set<() => void>()
  let errors = ''
  let over = false
  createInterface({ input: child.stdout! }).on('line', (line) => {
    lines.push(JSON.parse(line) as Record<string, unknown>)
    for (const watcher of [...watchers]) watcher()
  })
  child.stderr!.on('data', (data: Buffer) => {
    errors += data.toString()
  })
  const ended = new Promise<number | string>((resolve) =>
    child.on('close', (code, signal) => {
      over = true
      for (const watcher of [...watchers]) watcher()
      resolve(code ?? signal ?? 'unknown')
    }),
  )
  return {
    child,
    lines,
    errors: () => errors,
    ended,
    until: (test) =>
      new Promise((resolve, reject) => {
        const look = () => {
          const found = lines.find(test)
          if (found === undefined && !over) return
          watchers.delete(look)
          if (found !== undefined) resolve(found)
          else reject(new Error(`${words.join(' ')} ended without it: ${JSON.stringify(lines.slice(-3))} ${errors}`))
        }
        watchers.add(look)
        look()
      }),
  }
}
