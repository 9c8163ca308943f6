import type { At, Mark } from '../drawing/mark.ts'
import { textWidth } from '../drawing/textWidth.ts'
import { type Box, freePlace } from './labelPlace.ts'

export type LabelledPoint = At & {
  text: string
  /** Wanted on the left, where nothing was yet. */
  before: boolean
}

/** Where labels may stand: within the room, off what stands already, and if possible off what is drawn. */
export type LabelRoom = { room: Box; drawn: readonly At[]; standing?: readonly Box[] }

const lineEm = 1.35
/** A name a little farther off is better than one across a line, one far off is not. */
const laterPoints = 4
/** So many lines above or below its point a label may stand. */
const farthestLines = 9

/**
 * Names of points beside them, clear of one another and, where there is room, of what is drawn; those that come first keep
 * their place. A name that stands away from its point is led to it by a line; one that finds no place is left out.
 */
export function pointLabels(
  points: readonly LabelledPoint[],
  { room, drawn, standing = [] }: LabelRoom,
  em: number,
): Mark[] {
  const signs = points.map(({ x, y }) => ({ x: x - 0.5 * em, y: y - 0.5 * em, width: em, height: em }))
  const taken: Box[] = [...standing, ...signs]
  const leaders: Mark[] = []
  const names = points.flatMap((point): Mark[] => {
    const place = freePlace(placesFor(point, room, em), { room, taken, points: drawn, laterPoints })
    if (place === null) return []
    taken.push(place)
    const onLeft = place.x + place.width < point.x
    const middle = place.y + place.height / 2
    const beside = onLeft || place.x > point.x
    const from = {
      x: onLeft ? place.x + place.width : place.x,
      y: beside ? middle : middle < point.y ? place.y + place.height : place.y,
    }
    const foot = beside ? from : { x: point.x, y: from.y }
    if (Math.abs(middle - point.y) > 1.2 * em)
      leaders.push({ kind: 'rule', ink: 'leader', from: foot, to: { x: point.x, y: point.y } })
    const anchor = onLeft ? 'end' : 'start'
    return [{ kind: 'text', ink: 'label', x: from.x, y: middle + 0.35 * em, text: point.text, anchor }]
  })
  return [...leaders, ...names]
}

function placesFor({ x, y, text, before }: LabelledPoint, room: Box, em: number): Box[] {
  const width = textWidth(text, em)
  const height = 1.2 * em
  const right = x + 1.1 * em
  const left = x - 1.1 * em - width
  // Above or below the point itself, for a name that has room on neither side
  const middle = Math.max(room.x, Math.min(x - width / 2, room.x + room.width - width))
  const lines = Array.from({ length: farthestLines + 1 }, (_, line) => (line === 0 ? [0] : [-line, line])).flat()
  return lines.flatMap((line) =>
    [...(before ? [left, right] : [right, left]), ...(Math.abs(line) > 1 ? [middle] : [])].map((at) => ({
      ...{ x: at, y: y - height / 2 + line * lineEm * em, width, height },
    })),
  )
}
