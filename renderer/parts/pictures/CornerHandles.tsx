// Held by tests/browser/breaks/woodFromPicture.spec.ts.
import { type KeyboardEvent, type PointerEvent, useRef } from 'react'
import type { FaceCorners, PicturePoint } from '#domain/strength/face/homography.ts'

const names = ['Upper left corner', 'Upper right corner', 'Lower right corner', 'Lower left corner'] as const
const arrows: Readonly<Record<string, PicturePoint>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
}
/** Share of the picture that one key moves a corner; with Shift the smaller one. */
const step = 0.01
const fineStep = 0.001

const within = (share: number) => Math.min(1, Math.max(0, share))

/** The four corners of the bonded area over a picture, moved by mouse, finger or arrow keys; shares of its width and height. */
export function CornerHandles({ corners, onMove }: { corners: FaceCorners; onMove(corners: FaceCorners): void }) {
  const layer = useRef<HTMLDivElement>(null)
  const move = (at: number, { x, y }: PicturePoint) =>
    onMove(corners.map((corner, i) => (i === at ? { x: within(x), y: within(y) } : corner)) as unknown as FaceCorners)

  function onPointer(event: PointerEvent<HTMLElement>, at: number): void {
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    if (event.buttons !== 1 || layer.current === null) return
    const { left, top, width, height } = layer.current.getBoundingClientRect()
    move(at, { x: (event.clientX - left) / width, y: (event.clientY - top) / height })
  }

  function onKeyDown(event: KeyboardEvent, at: number): void {
    const arrow = arrows[event.key]
    if (arrow === undefined || event.ctrlKey || event.metaKey || event.altKey) return
    event.preventDefault()
    const far = event.shiftKey ? fineStep : step
    move(at, { x: corners[at]!.x + far * arrow.x, y: corners[at]!.y + far * arrow.y })
  }

  const outline = corners.map(({ x, y }) => `${100 * x},${100 * y}`).join(' ')
  return (
    <div className="corner-layer" ref={layer}>
      <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
        <polygon points={outline} className="corner-outline-under" />
        <polygon points={outline} className="corner-outline" />
      </svg>
      {corners.map(({ x, y }, at) => (
        <button
          key={names[at]}
          type="button"
          className="corner-handle"
          data-own-keys=""
          aria-label={`${names[at]}, ${(100 * x).toFixed(1)} % across, ${(100 * y).toFixed(1)} % down`}
          style={{ left: `${100 * x}%`, top: `${100 * y}%` }}
          onPointerDown={(event) => onPointer(event, at)}
          onPointerMove={(event) => onPointer(event, at)}
          onKeyDown={(event) => onKeyDown(event, at)}
        />
      ))}
    </div>
  )
}
