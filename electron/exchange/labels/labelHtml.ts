import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { escapeText } from '#figures/drawing/escapeText.ts'

/** Pages of labels as one HTML file that a browser prints in exact millimetres; it needs no other file and runs no script. */
export function labelHtml(pages: readonly string[], sheet: LabelSheet, title: string): string {
  const { pageWidthMm, pageHeightMm } = sheet
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>${escapeText(title)}</title>
<style>
@page { size: ${pageWidthMm}mm ${pageHeightMm}mm; margin: 0 }
html, body { margin: 0 }
.label-page { display: block; break-after: page; overflow: hidden }
.label-page:last-child { break-after: auto }
</style>
</head>
<body>
${pages.join('\n')}
</body>
</html>
`
}
