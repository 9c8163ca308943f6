import type { At } from '../drawing/mark.ts'

/** A place on a figure, pixels; x and y are its top left. */
export type Box = At & { width: number; height: number }

/**
 * Of the places wanted that lie within the room and on none that is taken, the one that covers the fewest points; of equals
 * the first. Each place later in the list weighs as much as `laterPoints` points covered. null: there is none.
 */
export function freePlace(wanted: readonly Box[], { room, taken, points = [], laterPoints = 0 }: FreeRoom): Box | null {
  let best: Box | null = null
  let least = Number.POSITIVE_INFINITY
  for (const [index, place] of wanted.entries()) {
    if (index * laterPoints >= least) break
    if (!contains(room, place) || taken.some((other) => overlap(place, other))) continue
    const weight = index * laterPoints + points.filter((point) => covers(place, point)).length
    if (weight >= least) continue
    best = place
    least = weight
  }
  return best
}

type FreeRoom = { room: Box; taken: readonly Box[]; points?: readonly At[]; laterPoints?: number }

/** Whether two places share more than an edge. */
export function overlap(one: Box, other: Box): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  )
}

function contains(room: Box, { x, y, width, height }: Box): boolean {
  return x >= room.x && y >= room.y && x + width <= room.x + room.width && y + height <= room.y + room.height
}

function covers({ x, y, width, height }: Box, point: At): boolean {
  return point.x >= x && point.x <= x + width && point.y >= y && point.y <= y + height
}

/** Points along a line, no farther apart than `stepPx`, so that a place that covers the line covers one of them. */
export function alongLine(points: readonly At[], stepPx: number): At[] {
  return points.flatMap((to, index) => {
    const from = points[index - 1] ?? to
    const steps = Math.max(Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / stepPx), 1)
    return Array.from({ length: steps }, (_, step) => ({
      x: to.x + ((from.x - to.x) * step) / steps,
      y: to.y + ((from.y - to.y) * step) / steps,
    }))
  })
}
