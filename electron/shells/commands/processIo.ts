import { Trouble } from '#contract/errors.ts'
import type { CommandIo } from './command.ts'

/** As much of the process as a command's input and output need. */
export type ProcessParts = Pick<NodeJS.Process, 'stdout' | 'stderr' | 'on' | 'exit'>

/**
 * The real process as a command sees it. Where a command heeds it, the first Ctrl-C (or a polite request to end) asks it to
 * finish, and a second one ends at once; a command that has nothing to bring to an end is ended by the first, as by the system.
 * A reader that closes its end of the pipe ("| head") is no fault; a disk that takes no more of the output is one.
 */
export function processIo(parts: ProcessParts = process): CommandIo {
  const interruption = new AbortController()
  let closed = false
  let lost: Trouble | null = null
  let heeded = false
  const ask = () => {
    if (interruption.signal.aborted) parts.exit(1)
    interruption.abort()
  }
  function heed() {
    if (heeded) return
    heeded = true
    // SIGHUP: the terminal was closed; what is being captured is kept as with Ctrl-C.
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) parts.on(signal, ask)
  }
  function close(error: NodeJS.ErrnoException) {
    closed = true
    // A terminal that was closed answers with EIO.
    if (error.code !== 'EPIPE' && error.code !== 'EIO') lost ??= outputTrouble(error)
    interruption.abort()
  }
  parts.stdout.on('error', close)
  parts.stderr.on('error', close)
  return {
    out: (text) =>
      new Promise((resolve) => {
        if (closed) return resolve(false)
        parts.stdout.write(text, (error) => {
          if (error) close(error)
          resolve(!error)
        })
      }),
    err: (text) => {
      parts.stderr.write(text)
    },
    get interrupt() {
      heed()
      return interruption.signal
    },
    lost: () => lost,
    interactive: parts.stderr.isTTY === true,
  }
}

function outputTrouble({ code, message }: NodeJS.ErrnoException): Trouble {
  const isFull = code === 'ENOSPC' || code === 'EDQUOT'
  return new Trouble(
    isFull ? 'disk-full' : 'internal',
    `Not all of the output could be written: ${isFull ? 'the disk has no room for it' : message}.`,
    'What was written of it is not whole. Write it to another place and try again.',
  )
}
