import type { Overview, OverviewView } from '#contract/findings/overview.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import { overviewGroups } from '#domain/findings/overview/overviewGroups.ts'
import { escapeText } from '#figures/drawing/escapeText.ts'
import { figureSheet } from '#figures/drawing/ink.ts'
import { svgText } from '#figures/drawing/svgText.ts'
import { overviewDrawing, overviewSheetSize } from '#figures/findings/overview/overviewDrawing.ts'
import { overviewSheetWords } from '#words/findings/overviewWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

/** An overview as one HTML file that a browser prints on one sheet of A3; it needs no other file and runs no script. */
export function overviewSheet(
  overview: Overview,
  view: OverviewView,
  { title, instant }: { title: string; instant: string },
  units: Preferences['units'],
): string {
  const { draw } = overviewDrawing(overviewGroups(overview), view, quantitiesIn(units))
  const words = escapeText(overviewSheetWords(overview, title, instant))
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>${escapeText(title)}</title>
<style>
@page { size: A3 landscape; margin: 10mm }
html, body { margin: 0 }
body { font: ${overviewSheetSize.emPx}px Roboto, "Liberation Sans", Arial, sans-serif }
p { margin: 0 0 8px }
svg { display: block; max-width: 100%; max-height: ${overviewSheetSize.heightPx}px }
${figureSheet}
</style>
</head>
<body>
<p>${words}</p>
${svgText(draw(overviewSheetSize, overviewSheetSize.heightPx))}
</body>
</html>
`
}
