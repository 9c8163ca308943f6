// Held by tests/browser/figureReading.spec.ts.
import { figureSheet } from '#figures/drawing/ink.ts'

let adopted: CSSStyleSheet | null = null

/** Gives the page the colours of figures, once. A sheet made by script is not inline style, which the page forbids. */
export function adoptFigureSheet(): void {
  if (adopted !== null) return
  adopted = new CSSStyleSheet()
  adopted.replaceSync(figureSheet)
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, adopted]
}
