// Held by tests/shells/commands/captureCommand.spec.ts.
import type { CommandIo } from './command.ts'

/**
 * The real process as a command sees it. The first Ctrl-C (or a polite request to end) asks the command to finish; a second
 * one ends at once. A reader that closes its end of the pipe ("| head") is no fault.
 */
export function processIo(): CommandIo {
  const interruption = new AbortController()
  let readerGone = false
  const ask = () => {
    if (interruption.signal.aborted) process.exit(1)
    interruption.abort()
  }
  process.on('SIGINT', ask)
  process.on('SIGTERM', ask)
  // The terminal was closed: what is being captured is kept as with Ctrl-C.
  process.on('SIGHUP', ask)
  const gone = (error: NodeJS.ErrnoException) => {
    // A terminal that was closed answers with EIO.
    if (error.code !== 'EPIPE' && error.code !== 'EIO') throw error
    readerGone = true
    interruption.abort()
  }
  process.stdout.on('error', gone)
  process.stderr.on('error', gone)
  return {
    out: (text) =>
      new Promise((resolve) => {
        if (readerGone) resolve(false)
        else process.stdout.write(text, (error) => resolve(error === undefined || error === null))
      }),
    err: (text) => {
      process.stderr.write(text)
    },
    interrupt: interruption.signal,
    interactive: process.stderr.isTTY === true,
  }
}
