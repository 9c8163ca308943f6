// Held by tests/browser/programme/duePage.spec.ts.
import type { LabelSheet } from '#contract/programme/labelSheet.ts'

/** Tells the browser on what paper the labels are printed; the returned function forgets it. */
export function adoptPrintedSize({ pageWidthMm, pageHeightMm }: LabelSheet): () => void {
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(`@page { size: ${pageWidthMm}mm ${pageHeightMm}mm; margin: 0 }`)
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet)
  }
}
