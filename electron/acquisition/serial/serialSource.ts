import { stat } from 'node:fs/promises'
import { SerialPort } from 'serialport'
import { Trouble } from '#contract/errors.ts'
import type { ByteListener, ByteSource } from '../byteSource.ts'
import type { Clock } from '../clock.ts'
import { groupOf, openTrouble } from './portTrouble.ts'

/** Waits between attempts to find a lost device again, s; the last one is repeated. */
const backOffS = [0.25, 0.5, 1, 2]

/** How often an open port is looked at from outside, s. */
const watchS = 0.5

/** What tells one device file from another under the same name; null when there is none. Ports of Windows are no files. */
async function deviceIdentity(path: string): Promise<string | null> {
  if (process.platform === 'win32') return ''
  try {
    const { rdev, ino } = await stat(path)
    return `${rdev}:${ino}`
  } catch {
    return null
  }
}

function lostTrouble(path: string): Trouble {
  return new Trouble(
    'port-lost',
    `The amplifier on ${path} went away.`,
    'Check plug and cable; the connection comes back by itself when the port does.',
  )
}

async function openPort(path: string, baudRate: number): Promise<SerialPort> {
  const port = new SerialPort({ path, baudRate, autoOpen: false, lock: true })
  try {
    await new Promise<void>((resolve, reject) => port.open((error) => (error ? reject(error) : resolve())))
    return port
  } catch (error) {
    const reason = error instanceof Error ? error.message.replace(/^Error:\s*/, '') : String(error)
    throw openTrouble(path, reason, await groupOf(path), process.platform)
  }
}

async function closePort(port: SerialPort): Promise<void> {
  if (!port.isOpen) return
  // A device that went away while it was being closed is closed as well.
  await new Promise<void>((resolve) => port.close(() => resolve()))
}

/** A serial port as a source of bytes; when the device goes away it is looked for until it is back or the source is closed. */
export function createSerialSource(path: string, baudRate: number, clock: Clock): ByteSource {
  let listener: ByteListener | null = null
  let port: SerialPort | null = null
  let cancelRetry: (() => void) | null = null
  let stopWatching = () => {}
  /** The attempt to open that is under way, so that close can wait for it. */
  let attempt: Promise<void> = Promise.resolve()

  function attach(opened: SerialPort): void {
    port = opened
    let cancelWatch = () => {}
    opened.on('data', (chunk: Buffer) => {
      if (port === opened) listener?.bytes(chunk, clock.nowS())
    })
    const gone = () => {
      if (port !== opened) return
      port = null
      cancelWatch()
      void closePort(opened)
      if (listener === null) return
      listener.lost(lostTrouble(path))
      retryLater(0)
    }
    opened.on('close', gone)
    opened.on('error', gone)

    // On Linux a port that was pulled reads as "nothing, for ever", which the library takes for a quiet device.
    const watch = (identity: string | null) => {
      cancelWatch = clock.after(watchS, () => {
        deviceIdentity(path).then((now) => {
          if (port !== opened) return
          if (now === null || now !== identity) gone()
          else watch(identity)
        })
      })
    }
    deviceIdentity(path).then((identity) => {
      if (port === opened) watch(identity)
    })
    stopWatching = () => cancelWatch()
  }

  function retryLater(failures: number): void {
    const waitS = backOffS[Math.min(failures, backOffS.length - 1)]!
    cancelRetry = clock.after(waitS, () => {
      cancelRetry = null
      attempt = retry(failures)
    })
  }

  async function retry(failures: number): Promise<void> {
    const wanted = listener
    try {
      const opened = await openPort(path, baudRate)
      // Told before the first byte can arrive; the listener may answer by closing.
      if (listener === wanted) wanted?.restored()
      if (listener === wanted && wanted !== null) attach(opened)
      else await closePort(opened)
    } catch {
      // Missing, busy or not ready yet: all of that passes while a device is being plugged in.
      if (listener === wanted && wanted !== null) retryLater(failures + 1)
    }
  }

  return {
    label: `${path} at ${baudRate} baud`,
    async open(newListener) {
      if (listener !== null) throw new RangeError('the serial source is open already')
      listener = newListener
      const opening = openPort(path, baudRate)
      attempt = opening.then(
        () => {},
        () => {},
      )
      try {
        const opened = await opening
        if (listener === newListener) attach(opened)
        else await closePort(opened)
      } catch (trouble) {
        listener = null
        throw trouble
      }
    },
    async close() {
      listener = null
      cancelRetry?.()
      cancelRetry = null
      await attempt
      stopWatching()
      const opened = port
      port = null
      if (opened !== null) await closePort(opened)
    },
  }
}
