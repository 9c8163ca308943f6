import type { At, Mark } from './mark.ts'

/** The place that a figure is drawn for: its width, and the height of its text. Its own height follows from these. */
export type FigureSize = { widthPx: number; emPx: number }

/** A point that can be read by pointer or by keys, and what is said of it. */
export type Reading = At & { words: string }

/** A figure before it is written out: what stands where, in pixels from the top left. */
export type Figure = FigureSize & {
  heightPx: number
  /** What is shown, in a few words. */
  title: string
  /** What it says, in sentences: for those who do not see it. */
  description: string
  marks: readonly Mark[]
  /** In the order in which keys go through them. */
  readings: readonly Reading[]
}
