/** Shapes of points, so that colour is never the only sign. */
export const pointShapes = ['circle', 'square', 'triangle', 'diamond'] as const
export type PointShape = (typeof pointShapes)[number]

/** Steps of the colour scale, lowest first: filled, their outline alone, and what is written on them. */
export const scaleInks = ['scale-1', 'scale-2', 'scale-3', 'scale-4', 'scale-5', 'scale-6'] as const
export const openInks = ['open-1', 'open-2', 'open-3', 'open-4', 'open-5', 'open-6'] as const
export const onScaleInks = ['on-1', 'on-2', 'on-3', 'on-4', 'on-5', 'on-6'] as const

/**
 * What a mark is drawn for. Its form (width, dashes) follows from `ink.ts` and its colour from the class of the same name,
 * so that one figure serves a light page, a dark page and paper.
 */
export const inks = [
  'grid',
  'axis',
  'zero',
  'centre',
  'limit',
  'rated',
  'curve',
  'ahead',
  'overlaid',
  'aside',
  'outlying',
  'foremost',
  'quartile',
  'band',
  'joined',
  'seated',
  'point',
  'hollow',
  'half',
  'event',
  'ring',
  'chosen',
  'mean',
  'spread',
  'rest',
  'span',
  'shade',
  'gap',
  'leader',
  'plate',
  'tick',
  'title',
  'label',
  'heading',
  'sheet',
  ...scaleInks,
  ...openInks,
  ...onScaleInks,
] as const
export type Ink = (typeof inks)[number]

export type At = { x: number; y: number }

/** One thing drawn, in pixels from the top left. */
export type Mark =
  /** A line through points; one that is not finite interrupts it. */
  | { kind: 'line'; ink: Ink; through: readonly At[] }
  /** A form given as path text. */
  | { kind: 'path'; ink: Ink; d: string }
  | { kind: 'circle'; ink: Ink; x: number; y: number; r: number }
  /** A straight line from one point to another. */
  | { kind: 'rule'; ink: Ink; from: At; to: At }
  | { kind: 'band'; ink: Ink; x: number; y: number; width: number; height: number }
  | { kind: 'text'; ink: Ink; x: number; y: number; text: string; anchor: Anchor }
  /** Marks drawn elsewhere: moved by so many pixels. */
  | { kind: 'moved'; by: At; marks: readonly Mark[] }
  /** Marks that belong together, and what is said when they are pointed at. */
  | { kind: 'named'; words: string; marks: readonly Mark[] }

export type Anchor = 'start' | 'middle' | 'end'
