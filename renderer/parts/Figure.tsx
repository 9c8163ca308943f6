import { type KeyboardEvent, type PointerEvent, useLayoutEffect, useMemo, useState } from 'react'
import type { FigureSize, Figure as Picture } from '#figures/drawing/figure.ts'
import { readingNear, readOutMarks } from '#figures/drawing/readOut.ts'
import { marksText, svgText } from '#figures/drawing/svgText.ts'
import { adoptFigureSheet } from './adoptFigureSheet.ts'
import { nextReading } from './nextReading.ts'
import { useFigureSize } from './useFigureSize.ts'
import './figure.css'

/**
 * A figure in the pixels of its place, so that its text is as large as all other. Its points are read by pointer, and by
 * arrow keys once it has the focus.
 */
export function Figure({ draw }: { draw(size: FigureSize): Picture }) {
  const { place, size } = useFigureSize()
  useLayoutEffect(adoptFigureSheet, [])
  return (
    <div ref={place} className="figure-place">
      {size === null ? null : <ReadFigure picture={draw(size)} />}
    </div>
  )
}

/** Renders again when another point is read, which draws nothing anew. */
function ReadFigure({ picture }: { picture: Picture }) {
  const [chosen, setChosen] = useState<number | null>(null)
  const text = useMemo(() => svgText(picture), [picture])
  // Every word in this text was escaped where it was written, and the same text must not be parsed again at every frame
  const drawn = useMemo(() => ({ __html: text }), [text])
  const { widthPx, heightPx, emPx, readings } = picture
  const overlay = chosen === null ? '' : marksText(readOutMarks(picture, chosen))
  const laidOver = useMemo(() => ({ __html: overlay }), [overlay])

  const point = (event: PointerEvent<HTMLElement>) => {
    const box = event.currentTarget.getBoundingClientRect()
    const scale = widthPx / box.width
    setChosen(readingNear(picture, (event.clientX - box.left) * scale, (event.clientY - box.top) * scale, 1.2 * emPx))
  }
  const move = (event: KeyboardEvent<HTMLElement>) => {
    const next = nextReading(event.key, chosen, readings.length)
    if (next === undefined) return
    event.preventDefault()
    setChosen(next)
  }
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset holds controls; here are points that are read
    <div
      role="group"
      aria-label={picture.title}
      aria-description={readings.length === 0 ? undefined : 'Arrow keys read its points.'}
      tabIndex={readings.length === 0 ? undefined : 0}
      data-own-keys=""
      onPointerMove={point}
      onPointerLeave={() => setChosen(null)}
      onBlur={() => setChosen(null)}
      onKeyDown={move}
    >
      <div dangerouslySetInnerHTML={drawn} />
      {chosen === null ? null : (
        <svg
          className="figure figure-read-out"
          viewBox={`0 0 ${widthPx} ${heightPx}`}
          fontSize={emPx}
          aria-hidden="true"
          dangerouslySetInnerHTML={laidOver}
        />
      )}
      <p className="visually-hidden" aria-live="polite">
        {chosen === null ? '' : readings[chosen]?.words}
      </p>
    </div>
  )
}
