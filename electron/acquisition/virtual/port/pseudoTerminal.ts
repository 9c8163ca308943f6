import { closeSync, fstatSync, readSync, statSync, writeSync } from 'node:fs'
import type { ReadStream } from 'node:tty'
import { Trouble } from '#contract/errors.ts'

/**
 * The device side of a pseudo-terminal: a serial port without a wire. This module is the only one that touches the package
 * behind it. DANGER: the object that its open() returns has the process id -1, so its kill() and destroy() would signal
 * every process of the machine. It never leaves this file, and all that is ever done to it is to close its two sockets.
 */
export type PseudoTerminal = {
  /** What a program opens as its serial port. */
  readonly path: string
  /** Some program has the port open. */
  hasReader(): boolean
  /** Hands over as many bytes as fit now and returns how many; 0 also when nobody has the port open. Never waits. */
  write(bytes: Uint8Array): number
  /** Pulls the plug: the reader's port is gone. */
  close(): void
}

type Pair = {
  _fd: number
  _pty: string
  _master: ReadStream
  _slave: ReadStream & { _handle: { fd: number } }
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : ''
}

async function openPair(): Promise<Pair> {
  if (process.platform === 'win32')
    throw new Trouble(
      'unsupported',
      'Windows has no pseudo-terminals, so there is no virtual serial port here.',
      'Use the virtual amplifier inside the program instead: choose it as the source on the bench screen.',
    )
  try {
    const { open } = (await import('@lydell/node-pty')) as unknown as { open(options: object): Pair }
    return open({ encoding: null })
  } catch (error) {
    throw new Trouble(
      'unsupported',
      `No pseudo-terminal can be had here: ${error instanceof Error ? error.message.split('\n')[0] : String(error)}.`,
      'Install the program with its optional packages, or use the virtual amplifier inside the program.',
    )
  }
}

/**
 * Closes our descriptors of the slave. Its socket works on a reopened copy, so the first one would stay behind and make it
 * look for ever as if somebody had the port open. Called before anybody else can know the path.
 */
function closeSlave(pair: Pair): void {
  const device = statSync(pair._pty).rdev
  const ofSocket = pair._slave._handle.fd
  for (let descriptor = 0; descriptor <= pair._fd + 64; descriptor++) {
    if (descriptor === ofSocket || descriptor === pair._fd) continue
    try {
      if (fstatSync(descriptor).rdev === device) closeSync(descriptor)
    } catch {
      // No such descriptor.
    }
  }
  pair._slave.destroy()
}

/** Opens a pseudo-terminal; a Trouble says why where there is none. */
export async function openPseudoTerminal(): Promise<PseudoTerminal> {
  const pair = await openPair()
  const descriptor = pair._fd
  const path = pair._pty
  // Nothing here may read through the sockets: the slave's would take bytes away from the program that opened the port, and
  // the master's ends in an error as soon as nobody has it open. They were told to read when they were made; it begins in
  // the next tick, and by then there is nothing to call.
  pair._master._read = () => {}
  pair._slave._read = () => {}
  closeSlave(pair)
  const discarded = new Uint8Array(1024)
  let open = true

  function hasReader(): boolean {
    if (!open) return false
    for (;;)
      try {
        if (readSync(descriptor, discarded) === 0) return false
      } catch (error) {
        // EAGAIN: open and silent. EIO: nobody has it open.
        return codeOf(error) === 'EAGAIN'
      }
  }

  return Object.freeze({
    path,
    hasReader,
    write(bytes: Uint8Array): number {
      // Written while nobody has it open, bytes would wait and surprise the next reader.
      if (!hasReader()) return 0
      let written = 0
      while (written < bytes.length)
        try {
          written += writeSync(descriptor, bytes, written)
        } catch (error) {
          const code = codeOf(error)
          if (code === 'EAGAIN' || code === 'EIO') break
          throw error
        }
      return written
    },
    close(): void {
      if (!open) return
      open = false
      pair._master.destroy()
    },
  })
}
