import { type ChildProcess, fork, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { projectFolder } from '#shells/start/build.ts'
import type { HostReport, HostRequest } from './liveHost.ts'

/** What the `emulate` command says first. */
export type EmulatorFacts = { path: string; nPerCount: number; capacityN: number }

/** The virtual amplifier as a program of its own, as a person would start it. */
export type Emulator = {
  facts: EmulatorFacts
  /** Resolves when the bench stands still, with the number of samples that went over the wire. */
  finished: Promise<{ samplesSent: number; loadings: number }>
  stop(): Promise<void>
}

/** Starts `emulate`; rejects with what it said when it cannot. */
export async function startEmulator(words: readonly string[]): Promise<Emulator> {
  const main = join(projectFolder, 'electron/shells/start/command.ts')
  const child = spawn(process.execPath, [main, 'emulate', '--json', ...words], { stdio: ['ignore', 'pipe', 'pipe'] })
  let complaint = ''
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    complaint += text
  })
  let tellFirst: (facts: EmulatorFacts) => void
  let tellLast: (totals: { samplesSent: number; loadings: number }) => void
  const first = new Promise<EmulatorFacts>((resolve) => {
    tellFirst = resolve
  })
  const finished = new Promise<{ samplesSent: number; loadings: number }>((resolve) => {
    tellLast = resolve
  })
  createInterface({ input: child.stdout }).on('line', (line) => {
    const said = JSON.parse(line)
    if ('path' in said) tellFirst(said)
    if (said.event === 'finished') tellLast(said)
  })
  const gone = once(child, 'exit').then(() => null)
  const facts = await Promise.race([first, gone])
  if (facts === null) throw new Error(complaint.trim())
  return { facts, finished, stop: () => end(child, gone) }
}

/** The browser host in a process of its own. */
export type LiveHost = { ask(request: HostRequest): Promise<HostReport>; stop(): Promise<void> }

/** Starts the host's process; it serves when it is asked to. */
export function startLiveHost(): LiveHost {
  const child = fork(join(projectFolder, 'tests/bench/liveHost.ts'), { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] })
  const gone = once(child, 'exit').then(() => null)
  return {
    async ask(request) {
      const heard = once(child, 'message')
      child.send(request)
      const message = await Promise.race([heard, gone])
      if (message === null) throw new Error('the host ended early')
      const [answer] = message as [{ report: HostReport } | { failed: string }]
      if ('failed' in answer) throw new Error(answer.failed)
      return answer.report
    },
    stop: () => end(child, gone),
  }
}

async function end(child: ChildProcess, gone: Promise<null>): Promise<void> {
  if (child.exitCode === null && child.signalCode === null) child.kill('SIGTERM')
  await gone
}
