import type { At, Mark, PointShape } from './mark.ts'

/** The outline of a point's shape about its middle, as path text; `size` 1 is as wide as a small letter. */
export function shapePath(shape: PointShape, { x, y }: At, size: number): string {
  const to = (dx: number, dy: number) => `${tidy(x + dx * size)} ${tidy(y + dy * size)}`
  if (shape === 'square') return `M${to(-4, -4)}L${to(4, -4)}L${to(4, 4)}L${to(-4, 4)}Z`
  if (shape === 'triangle') return `M${to(0, -5)}L${to(5, 4)}L${to(-5, 4)}Z`
  if (shape === 'diamond') return `M${to(0, -5.5)}L${to(5.5, 0)}L${to(0, 5.5)}L${to(-5.5, 0)}Z`
  const r = tidy(4.4 * size)
  return `M${to(-4.4, 0)}a${r} ${r} 0 1 1 ${2 * r} 0a${r} ${r} 0 1 1 ${-2 * r} 0Z`
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
