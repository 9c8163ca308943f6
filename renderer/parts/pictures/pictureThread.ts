// Held by tests/browser/breaks/woodFromPicture.spec.ts.
import { Trouble } from '#contract/errors.ts'
import type { FaceCorners } from '#domain/strength/face/homography.ts'
import type { FaceReading, PictureAnswer, PictureRequest } from './pictureMessages.ts'

/** The thread that decodes and reads pictures for one part of the page. */
export type PictureThread = {
  /**
   * Decodes a picture and scales it down, turned as its camera says. Its bytes go over to the thread: copying thirty megabytes would hold the
   * page up. Rejects with a Trouble where it cannot be decoded.
   */
  show(parts: Uint8Array<ArrayBuffer>[], mediaType: string, longestSide: number): Promise<ImageBitmap>
  /** Reads the picture shown last; what was asked before and is not answered yet never is. */
  read(corners: FaceCorners, proportion: number, onProgress: (share: number) => void): Promise<FaceReading>
  end(): void
}

type Waiting = {
  resolve(answer: PictureAnswer): void
  reject(trouble: Trouble): void
  onProgress(share: number): void
}

const damaged = () =>
  new Trouble(
    'not-readable',
    'This picture cannot be shown: its bytes are kept as they came, and they are damaged or of a form that no browser reads.',
    'Add the picture again from where it came.',
  )

type Asked = PictureRequest extends infer One ? (One extends PictureRequest ? Omit<One, 'id'> : never) : never

/** Starts the thread. */
export function startPictureThread(): PictureThread {
  const worker = new Worker(new URL('./pictureWorker.ts', import.meta.url), { type: 'module' })
  const waiting = new Map<number, Waiting>()
  let lastId = 0

  worker.onmessage = ({ data }: MessageEvent<PictureAnswer>) => {
    const one = waiting.get(data.id)
    if (one === undefined) return
    if (data.kind === 'progress') return one.onProgress(data.share)
    waiting.delete(data.id)
    if (data.kind === 'failed') one.reject(damaged())
    else one.resolve(data)
  }
  worker.onerror = () => {
    for (const one of waiting.values()) one.reject(damaged())
    waiting.clear()
  }

  function ask(
    request: Asked,
    transfer: Transferable[],
    onProgress: (share: number) => void = () => {},
  ): Promise<PictureAnswer> {
    lastId += 1
    const id = lastId
    return new Promise((resolve, reject) => {
      waiting.set(id, { resolve, reject, onProgress })
      worker.postMessage({ ...request, id }, transfer)
    })
  }

  return {
    async show(parts, mediaType, longestSide) {
      const transfer = parts.map(({ buffer }) => buffer)
      const answer = await ask({ kind: 'show', parts, mediaType, longestSide }, transfer)
      if (answer.kind !== 'shown') throw damaged()
      return answer.bitmap
    },
    async read(corners, proportion, onProgress) {
      const answer = await ask({ kind: 'read', corners, proportion }, [], onProgress)
      if (answer.kind !== 'read') throw damaged()
      return answer.reading
    },
    end: () => worker.terminate(),
  }
}
