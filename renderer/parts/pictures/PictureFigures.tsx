import { useEffect, useRef } from 'react'
import { type FaceCorners, isConvex } from '#domain/strength/face/homography.ts'
import type { TornMask } from '#domain/strength/face/tornMask.ts'
import { CornerHandles } from './CornerHandles.tsx'
import { hatchedFace } from './paintFace.ts'
import type { FaceReading } from './pictureMessages.ts'
import { drawBitmap } from './Thumbnail.tsx'
import type { FaceState } from './useFaceReading.ts'

/** The photograph with the corners of the bonded area, and beside it the area seen straight on with its torn wood hatched. */
export function PictureFigures({
  name,
  state: { bitmap, reading, progress },
  mask,
  corners,
  onCorners,
}: {
  name: string
  state: FaceState
  mask: TornMask | null
  corners: FaceCorners
  onCorners(corners: FaceCorners): void
}) {
  return (
    <div className="wood-picture">
      <figure>
        <figcaption>
          Put the corners on those of the bonded area: drag them, or move them with the arrow keys.
        </figcaption>
        <div className="corner-stage">
          <PictureCanvas bitmap={bitmap} name={name} />
          {bitmap === null ? null : <CornerHandles corners={corners} onMove={onCorners} />}
        </div>
      </figure>
      <figure>
        <figcaption>The area seen straight on; what counts as torn wood is hatched.</figcaption>
        {reading === null || mask === null ? null : <FaceCanvas reading={reading} mask={mask} />}
        <p role="status" className="quiet">
          {isConvex(corners) ? progressWords(progress) : 'The corners cross over. Put them around the area.'}
        </p>
      </figure>
    </div>
  )
}

const progressWords = (progress: number | null) =>
  progress === null ? '' : `Reading the face: ${Math.round(100 * progress)} %`

function PictureCanvas({ bitmap, name }: { bitmap: ImageBitmap | null; name: string }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    if (bitmap !== null && canvas.current !== null) drawBitmap(canvas.current, bitmap)
  }, [bitmap])
  return <canvas ref={canvas} role="img" aria-label={name} width={4} height={3} />
}

function FaceCanvas({ reading, mask }: { reading: FaceReading; mask: TornMask }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const { face } = reading
  useEffect(() => {
    const pixels = new ImageData(hatchedFace(face, mask), face.width, face.height)
    canvas.current?.getContext('2d')?.putImageData(pixels, 0, 0)
  }, [face, mask])
  return (
    <canvas
      ref={canvas}
      role="img"
      aria-label="The bonded area with torn wood hatched"
      width={face.width}
      height={face.height}
    />
  )
}
