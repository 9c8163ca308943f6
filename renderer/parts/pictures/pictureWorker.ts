// Held by tests/browser/breaks/woodFromPicture.spec.ts.
import { type ShownPicture, shownFace, straightened } from '#domain/strength/face/facePixels.ts'
import type { FaceCorners } from '#domain/strength/face/homography.ts'
import { tornScores } from '#domain/strength/face/tornScores.ts'
import type { PictureAnswer, PictureRequest } from './pictureMessages.ts'

// Runs in a thread of its own: a picture of sixty megapixels takes a second to decode, and the page goes on meanwhile.

/** Milliseconds after which the thread looks whether something newer was asked. */
const listensEveryMs = 40
/** About how many steps the scores of a face take; progress is told by it. */
const stepsOfScores = 70

let shown: ShownPicture | null = null
let newest = 0

function say(answer: PictureAnswer, transfer: Transferable[] = []): void {
  self.postMessage(answer, { transfer })
}

/** Decodes, turns as the camera says, and scales down; the pixels are kept for reading. */
async function show(parts: Uint8Array<ArrayBuffer>[], mediaType: string, longestSide: number): Promise<ImageBitmap> {
  const whole = await createImageBitmap(new Blob(parts, { type: mediaType }))
  const scale = Math.min(1, longestSide / Math.max(whole.width, whole.height))
  const width = Math.max(1, Math.round(whole.width * scale))
  const height = Math.max(1, Math.round(whole.height * scale))
  const canvas = new OffscreenCanvas(width, height)
  const context = canvas.getContext('2d', { willReadFrequently: true })!
  context.imageSmoothingQuality = 'high'
  context.drawImage(whole, 0, 0, width, height)
  whole.close()
  shown = { width, height, pixels: context.getImageData(0, 0, width, height).data as Uint8ClampedArray<ArrayBuffer> }
  return canvas.transferToImageBitmap()
}

/** Runs steps to their end, listening in between; null once something newer was asked. */
async function listening<T>(id: number, steps: Generator<unknown, T>, onStep: (n: number) => void): Promise<T | null> {
  let listenedMs = performance.now()
  for (let n = 0; ; n++) {
    const step = steps.next()
    if (step.done === true) return step.value
    if (performance.now() - listenedMs < listensEveryMs) continue
    onStep(n)
    await new Promise((resume) => setTimeout(resume))
    if (id !== newest) return null
    listenedMs = performance.now()
  }
}

async function read(id: number, picture: ShownPicture, shares: FaceCorners, proportion: number): Promise<void> {
  const corners = shares.map(({ x, y }) => ({
    x: x * picture.width,
    y: y * picture.height,
  })) as unknown as FaceCorners
  const progress = (share: number) => say({ id, kind: 'progress', share: Math.min(1, share) })
  const pixels = await listening(id, straightened(picture, corners, proportion), (n) => progress((0.4 * n) / 30))
  if (pixels === null) return
  const torn = await listening(id, tornScores(pixels), (n) => progress(0.4 + (0.6 * n) / stepsOfScores))
  if (torn !== null) say({ id, kind: 'read', reading: { face: shownFace(pixels), torn } })
}

self.onmessage = async ({ data }: MessageEvent<PictureRequest>) => {
  const { id } = data
  newest = id
  try {
    if (data.kind === 'show') {
      const bitmap = await show(data.parts, data.mediaType, data.longestSide)
      say({ id, kind: 'shown', bitmap }, [bitmap])
    } else if (shown !== null) await read(id, shown, data.corners, data.proportion)
  } catch {
    // What a browser cannot decode is damaged; it says no more than that.
    say({ id, kind: 'failed' })
  }
}
