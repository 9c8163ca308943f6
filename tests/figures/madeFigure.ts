import type { Figure, FigureSize } from '#figures/drawing/figure.ts'

/** A figure in an exact state. */
export type MadeFigure = { name: string; draw(size: FigureSize): Figure }
