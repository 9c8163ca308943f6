import type { At, Mark, PointShape } from './mark.ts'

/** Corners of each shape about its middle, at size 1. */
const corners = {
  square: [-4, -4, 4, -4, 4, 4, -4, 4],
  triangle: [0, -5, 5, 4, -5, 4],
  diamond: [0, -5.5, 5.5, 0, 0, 5.5, -5.5, 0],
} as const
const radius = 4.4

/** Where an outline begins beside the middle, and how it goes on from there: the same for all points of a size. */
type Outline = { dx: number; dy: number; rest: string }
const outlines = new Map<string, Outline>()

function outlineOf(shape: PointShape, size: number): Outline {
  const key = `${shape} ${size}`
  const known = outlines.get(key)
  if (known !== undefined) return known
  const made = shape === 'circle' ? circleOf(size) : polygonOf(corners[shape], size)
  outlines.set(key, made)
  return made
}

function circleOf(size: number): Outline {
  const r = tidy(radius * size)
  return { dx: -radius * size, dy: 0, rest: `a${r} ${r} 0 1 1 ${2 * r} 0a${r} ${r} 0 1 1 ${-2 * r} 0Z` }
}

function polygonOf(points: readonly number[], size: number): Outline {
  const steps: string[] = []
  for (let i = 2; i < points.length; i += 2)
    steps.push(`l${tidy((points[i]! - points[i - 2]!) * size)} ${tidy((points[i + 1]! - points[i - 1]!) * size)}`)
  return { dx: points[0]! * size, dy: points[1]! * size, rest: `${steps.join('')}Z` }
}

/** The outline of a point's shape about its middle, as path text; `size` 1 is as wide as a small letter. */
export function shapePath(shape: PointShape, { x, y }: At, size: number): string {
  const { dx, dy, rest } = outlineOf(shape, size)
  return `M${tidy(x + dx)} ${tidy(y + dy)}${rest}`
}

/** How far any shape of that size reaches from its middle, pixels. */
export function reachOf(size: number): number {
  return 6.5 * size
}

/** A point as a mark: filled, or its outline only. */
export function pointMark(shape: PointShape, at: At, size: number, hollow: boolean): Mark {
  return { kind: 'path', ink: hollow ? 'hollow' : 'point', d: shapePath(shape, at, size) }
}

function tidy(value: number): number {
  return Math.round(value * 100) / 100
}
