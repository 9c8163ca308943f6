import type { Listening } from '#contract/bench/bench.ts'
import type { ByteSource } from '../byteSource.ts'
import type { Clock } from '../clock.ts'
import { proposeFormat } from './proposeFormat.ts'
import { createSerialSource } from './serialSource.ts'

/** Enough to judge any stream; a fast one is not kept whole. */
const mostBytes = 1 << 20

/** Listens to a source for some seconds and judges what came. Rejects with the source's Trouble, also when it is lost. */
export async function listenTo(
  source: ByteSource,
  baudRate: number | null,
  seconds: number,
  clock: Clock,
): Promise<Listening> {
  const heard: Uint8Array[] = []
  let length = 0
  let heardForS = seconds
  let startS = clock.nowS()
  const over = Promise.withResolvers<void>()
  // When opening fails nobody waits for this one.
  over.promise.catch(() => {})
  try {
    await source.open({
      bytes(chunk, arrivalS) {
        if (length >= mostBytes) return
        heard.push(chunk.slice())
        length += chunk.length
        if (length < mostBytes) return
        heardForS = arrivalS - startS
        over.resolve()
      },
      lost: (trouble) => over.reject(trouble),
      restored: () => {},
      ended: () => over.resolve(),
    })
    startS = clock.nowS()
    const cancel = clock.after(seconds, () => over.resolve())
    await over.promise.finally(cancel)
  } finally {
    await source.close()
  }
  return proposeFormat(Buffer.concat(heard), heardForS, baudRate)
}

/** Listens on a port for some seconds and proposes the line format of what is connected there. */
export function listenOnPort(path: string, baudRate: number, seconds: number, clock: Clock): Promise<Listening> {
  return listenTo(createSerialSource(path, baudRate, clock), baudRate, seconds, clock)
}
