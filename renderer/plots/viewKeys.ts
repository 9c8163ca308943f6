import { pan, type Span, zoom } from './zoom.ts'

/** What a plot shows of a curve; `cursorS`: where the cursor stands, null where there is none. */
export type PlotView = { span: Span; whole: Span; leastS: number; cursorS: number | null }

/** The cursor as far as it is in sight, else the middle of what is shown. */
export function centreOf({ span, cursorS }: Pick<PlotView, 'span' | 'cursorS'>): number {
  const inSight = cursorS !== null && cursorS >= span.fromS && cursorS <= span.toS
  return inSight ? cursorS : (span.fromS + span.toS) / 2
}

/** What is shown after a key that zooms or moves the view; null when the key is none of these. */
export function spanAfterKey(name: string, view: PlotView): Span | null {
  const { span, whole, leastS } = view
  switch (name) {
    case '+':
    case '=':
      return zoom(span, 0.5, centreOf(view), whole, leastS)
    case '-':
      return zoom(span, 2, centreOf(view), whole, leastS)
    case '0':
      return whole
    case 'PageUp':
      return pan(span, -0.5, whole)
    case 'PageDown':
      return pan(span, 0.5, whole)
    default:
      return null
  }
}

/** Whether all of a curve is shown. */
export function isWhole({ span, whole }: Pick<PlotView, 'span' | 'whole'>): boolean {
  return span.fromS <= whole.fromS && span.toS >= whole.toS
}
