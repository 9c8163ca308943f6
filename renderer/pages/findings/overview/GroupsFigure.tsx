import { type CSSProperties, type KeyboardEvent, memo, useLayoutEffect, useMemo, useRef } from 'react'
import type { FigureSize } from '#figures/drawing/figure.ts'
import { svgText } from '#figures/drawing/svgText.ts'
import type { Box } from '#figures/findings/overview/matrix.ts'
import type { GroupsFigure as Picture } from '#figures/findings/overview/overviewFigure.ts'
import { adoptFigureSheet } from '../../../parts/adoptFigureSheet.ts'
import { useFigureSize } from '../../../parts/useFigureSize.ts'
import { nextPlace } from './nextPlace.ts'

/**
 * A figure of groups in the pixels of its place. Each group is a button over its place: one of them is reached by Tab, the others
 * from it by arrow keys. `draw` must stay the same as long as nothing changes. `onSight`: where pointer or focus is.
 */
export function GroupsFigure({
  draw,
  words,
  onSight,
  onOpen,
}: {
  draw(size: FigureSize): Picture
  /** What is said of each group. */
  words: readonly string[]
  onSight(index: number | null): void
  onOpen(index: number): void
}) {
  const { place, size } = useFigureSize()
  useLayoutEffect(adoptFigureSheet, [])
  const picture = useMemo(() => (size === null ? null : draw(size)), [draw, size])
  // Every word in this text was escaped where it was written
  const drawn = useMemo(() => (picture === null ? null : { __html: svgText(picture) }), [picture])
  return (
    <div ref={place} className="figure-place groups-figure matrix-scroll">
      {picture === null || drawn === null ? null : (
        <div className="groups-figure-page" style={{ '--figure-width': `${picture.widthPx}px` } as CSSProperties}>
          <div dangerouslySetInnerHTML={drawn} />
          <Places label={picture.title} places={picture.places} words={words} onSight={onSight} onOpen={onOpen} />
        </div>
      )}
    </div>
  )
}

/** Does not render again when another place is looked at. */
const Places = memo(function Places({
  label,
  places,
  words,
  onSight,
  onOpen,
}: {
  label: string
  places: readonly Box[]
  words: readonly string[]
  onSight(index: number | null): void
  onOpen(index: number): void
}) {
  const list = useRef<HTMLDivElement>(null)
  const reached = useRef(0)
  if (reached.current >= places.length) reached.current = 0
  const indexOf = (target: EventTarget) => Number((target as HTMLElement).dataset.place ?? Number.NaN)
  const sight = ({ target }: { target: EventTarget }) => {
    const index = indexOf(target)
    if (Number.isInteger(index)) onSight(index)
  }

  function reach(index: number): void {
    const buttons = list.current?.children ?? []
    ;(buttons[reached.current] as HTMLElement | undefined)?.setAttribute('tabindex', '-1')
    ;(buttons[index] as HTMLElement | undefined)?.setAttribute('tabindex', '0')
    reached.current = index
  }
  function move(event: KeyboardEvent<HTMLElement>): void {
    const next = nextPlace(event.key, indexOf(event.target), places)
    if (next === undefined) return
    event.preventDefault()
    ;(list.current?.children[next] as HTMLElement | undefined)?.focus()
  }
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset holds what is filled in; here are groups that are opened
    <div
      ref={list}
      role="group"
      aria-label={label}
      aria-description="Arrow keys move between groups, Enter opens one."
      onKeyDown={move}
      onPointerOver={sight}
      onPointerLeave={() => onSight(null)}
      onFocus={(event) => {
        reach(indexOf(event.target))
        sight(event)
      }}
    >
      {places.map(({ x, y, width, height }, index) => (
        <button
          key={words[index]}
          type="button"
          className="groups-figure-place"
          data-place={index}
          tabIndex={index === reached.current ? 0 : -1}
          aria-label={words[index]}
          style={{ left: x, top: y, width, height }}
          onClick={() => onOpen(index)}
        />
      ))}
    </div>
  )
})
