// Held by tests/browser/breaks/woodFromPicture.spec.ts.
import { useEffect, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { Attachment } from '#contract/specimens/attachment.ts'
import { type FaceCorners, isConvex } from '#domain/strength/face/homography.ts'
import { type AreaSides, proportionOf } from '#domain/strength/face/proportion.ts'
import { useHost } from '../../host/hostContext.ts'
import type { FaceReading } from './pictureMessages.ts'
import { pictureParts } from './pictureParts.ts'
import type { PictureThread } from './pictureThread.ts'

/** Pixels along the longer side of a picture as it is shown and read. */
const longestSide = 2000
/** Corners are read once they have stood still so long, ms. */
const settlesAfterMs = 150

export type FaceState = {
  /** null until it is decoded. */
  bitmap: ImageBitmap | null
  /** Of the corners as they stand, or as they stood before while `progress` is told. */
  reading: FaceReading | null
  progress: number | null
  error: TroubleMessage | null
}

/** A kept picture and what is read from it within these corners. */
export function useFaceReading(
  { attachmentId, mediaType }: Attachment,
  thread: PictureThread | null,
  corners: FaceCorners,
  sides: AreaSides | null,
): FaceState {
  const { client } = useHost()
  const [state, setState] = useState<FaceState>({ bitmap: null, reading: null, progress: null, error: null })
  const [size, setSize] = useState<{ width: number; height: number } | null>(null)

  useEffect(() => {
    if (thread === null) return
    let wanted = true
    async function show(from: PictureThread) {
      const parts = await pictureParts(client, attachmentId)
      const bitmap = await from.show(parts, mediaType, longestSide)
      if (!wanted) return
      setSize({ width: bitmap.width, height: bitmap.height })
      setState((before) => ({ ...before, bitmap }))
    }
    show(thread).catch((thrown) => {
      if (wanted) setState((before) => ({ ...before, error: troubleFrom(thrown) }))
    })
    return () => {
      wanted = false
    }
  }, [client, thread, attachmentId, mediaType])

  useEffect(() => {
    if (thread === null || size === null || !isConvex(corners)) return
    let wanted = true
    const told = (change: Partial<FaceState>) => {
      if (wanted) setState((before) => ({ ...before, ...change }))
    }
    const inPixels = corners.map(({ x, y }) => ({
      x: x * size.width,
      y: y * size.height,
    })) as unknown as FaceCorners
    const timer = setTimeout(() => {
      told({ progress: 0 })
      thread
        .read(corners, proportionOf(inPixels, sides), (progress) => told({ progress }))
        .then((reading) => told({ reading, progress: null }))
        .catch((thrown) => told({ error: troubleFrom(thrown), progress: null }))
    }, settlesAfterMs)
    return () => {
      wanted = false
      clearTimeout(timer)
    }
  }, [thread, size, corners, sides])

  return state
}
