import { mkdtempSync, rmSync, symlinkSync, unlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openPseudoTerminal, type PseudoTerminal } from '#acquisition/virtual/port/pseudoTerminal.ts'

/** A real port that can be pulled and put back under the same path, as a USB adapter can. */
export type PtyPlug = {
  readonly path: string
  plugIn(): Promise<PseudoTerminal>
  /** The device of now; throws when it is not plugged in. */
  device(): PseudoTerminal
  pull(): void
  /** Pulls the plug and removes every trace. */
  remove(): void
}

export function ptyPlug(): PtyPlug {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-port-'))
  const path = join(folder, 'port')
  let terminal: PseudoTerminal | null = null
  function pull(): void {
    if (terminal === null) return
    terminal.close()
    terminal = null
    unlinkSync(path)
  }
  return {
    path,
    async plugIn() {
      terminal = await openPseudoTerminal()
      symlinkSync(terminal.path, path)
      return terminal
    },
    device() {
      if (terminal === null) throw new RangeError('nothing is plugged in')
      return terminal
    },
    pull,
    remove() {
      pull()
      rmSync(folder, { recursive: true })
    },
  }
}

/** Looks again and again, as a real port needs, until something holds; gives up after looks enough for any machine. */
export async function eventually(holds: () => boolean | Promise<boolean>): Promise<void> {
  for (let i = 0; i < 20_000; i++) {
    if (await holds()) return
    await new Promise((resolve) => setTimeout(resolve, 5))
  }
  throw new Error(`never came true: ${holds}`)
}

/** Writes all of it, giving the reader in this process room to take it. */
export async function writeAll(terminal: PseudoTerminal, bytes: Uint8Array): Promise<void> {
  for (let at = 0; at < bytes.length; ) {
    const taken = terminal.write(bytes.subarray(at))
    at += taken
    if (taken === 0) await new Promise((resolve) => setTimeout(resolve, 1))
  }
}
