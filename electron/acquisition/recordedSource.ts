import { readFile } from 'node:fs/promises'
import { Trouble } from '#contract/errors.ts'
import type { ByteListener, ByteSource } from './byteSource.ts'
import type { Clock } from './clock.ts'

export type RecordedSourceOptions = {
  /** The bytes themselves, or the path of a file that holds them. */
  recording: Uint8Array | string
  /** How fast the bytes came when they were recorded. */
  bytesPerSecond: number
  /** true: played in the time they took; false: at once, with the arrival times they would have had. */
  paced: boolean
  label?: string
  /** The stream is handed over in pieces of so many bytes. */
  chunkBytes?: number
}

async function read(recording: Uint8Array | string): Promise<Uint8Array> {
  if (typeof recording !== 'string') return recording
  try {
    return await readFile(recording)
  } catch (error) {
    throw new Trouble(
      'not-readable',
      `The recording ${recording} cannot be read: ${error instanceof Error ? error.message : String(error)}.`,
      'Check the name of the file and that you may read it.',
    )
  }
}

/** Plays a recorded byte stream as if its device were there, then ends. Opened again it plays from the start. */
export function createRecordedSource(options: RecordedSourceOptions, clock: Clock): ByteSource {
  const { recording, bytesPerSecond, paced, chunkBytes = 4096 } = options
  if (!(bytesPerSecond > 0)) throw new RangeError('createRecordedSource requires bytesPerSecond above 0')
  const name = typeof recording === 'string' ? recording : `${recording.length} bytes`
  let listener: ByteListener | null = null
  let cancel: (() => void) | null = null

  function play(bytes: Uint8Array, at: number, startS: number): void {
    cancel = null
    const to = listener
    if (to === null) return
    if (at >= bytes.length) {
      listener = null
      to.ended()
      return
    }
    const end = Math.min(at + chunkBytes, bytes.length)
    to.bytes(bytes.subarray(at, end), startS + end / bytesPerSecond)
    if (listener !== null) schedule(bytes, end, startS)
  }

  /** A piece is handed over when its last byte would have arrived. */
  function schedule(bytes: Uint8Array, at: number, startS: number): void {
    const end = Math.min(at + chunkBytes, bytes.length)
    const waitS = paced ? Math.max(0, startS + end / bytesPerSecond - clock.nowS()) : 0
    cancel = clock.after(waitS, () => play(bytes, at, startS))
  }

  return {
    label: options.label ?? `recording: ${name}`,
    async open(newListener) {
      if (listener !== null) throw new RangeError('the recorded source is open already')
      listener = newListener
      try {
        const bytes = await read(recording)
        if (listener === newListener) schedule(bytes, 0, clock.nowS())
      } catch (trouble) {
        listener = null
        throw trouble
      }
    },
    async close() {
      listener = null
      cancel?.()
      cancel = null
    },
  }
}
