import { useEffect, useRef, useState } from 'react'
import type { Attachment } from '#contract/specimens/attachment.ts'
import { pictureName } from '#words/specimens/pictureWords.ts'
import { useHost } from '../../host/hostContext.ts'
import { pictureParts } from './pictureParts.ts'
import type { PictureThread } from './pictureThread.ts'

/** Pixels along the longer side of a small picture; screens of two pixels a point included. */
const smallSide = 360

/** A kept picture, small unless another length of its longer side is given. */
export function Thumbnail({
  attachment,
  thread,
  longestSide = smallSide,
  className = 'thumbnail',
}: {
  attachment: Attachment
  thread: PictureThread
  longestSide?: number
  className?: string
}) {
  const { client } = useHost()
  const canvas = useRef<HTMLCanvasElement>(null)
  const [damaged, setDamaged] = useState(false)
  const { attachmentId, mediaType } = attachment

  useEffect(() => {
    let wanted = true
    async function draw() {
      const parts = await pictureParts(client, attachmentId)
      const bitmap = await thread.show(parts, mediaType, longestSide)
      if (wanted && canvas.current !== null) drawBitmap(canvas.current, bitmap)
    }
    draw().catch(() => {
      if (wanted) setDamaged(true)
    })
    return () => {
      wanted = false
    }
  }, [client, thread, attachmentId, mediaType, longestSide])

  return damaged ? (
    <span className="thumbnail thumbnail-damaged">This picture cannot be shown.</span>
  ) : (
    <canvas ref={canvas} className={className} role="img" aria-label={pictureName(attachment)} width={4} height={3} />
  )
}

/** Puts a picture on a canvas of its size. */
export function drawBitmap(canvas: HTMLCanvasElement, bitmap: ImageBitmap): void {
  canvas.width = bitmap.width
  canvas.height = bitmap.height
  canvas.getContext('bitmaprenderer')?.transferFromImageBitmap(bitmap)
}
