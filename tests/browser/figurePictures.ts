/**
 * Pictures of every figure, to look at: `node tests/browser/figurePictures.ts [part of a name]`.
 * They go to tests/output/pictures, in both themes and at the widths that pages have.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { figureSheet } from '#figures/drawing/ink.ts'
import { svgText } from '#figures/drawing/svgText.ts'
import { projectFolder } from '#shells/start/build.ts'
import { madeFigures } from '#tests/figures/madeFigures.ts'
import { openBrowser } from './harness/chromium.ts'
import { takePicture } from './harness/openPage.ts'

const looks = [
  { width: 1280, height: 800, theme: 'light', widths: [640, 1200], emPx: 12.5 },
  { width: 1920, height: 1080, theme: 'dark', widths: [420, 1400], emPx: 15 },
] as const
const styles = ['renderer/theme/tokens.css', 'renderer/theme/base.css', 'renderer/parts/figure.css']
  .map((file) => readFileSync(join(projectFolder, file), 'utf8'))
  .join('\n')

const wanted = process.argv[2] ?? ''
const figures = (await madeFigures('Saltmarsh Boatyard School')).filter(({ name }) => name.includes(wanted))
for (const look of looks) {
  const browser = await openBrowser(look)
  const page = await browser.context.newPage()
  for (const { name, draw } of figures) {
    const drawn = look.widths.map((widthPx) => {
      const figure = draw({ widthPx, emPx: look.emPx })
      return `<div style="width:${widthPx}px;margin:12px"><div class="figure-place">${svgText(figure)}</div></div>`
    })
    await page.setContent(
      `<html data-theme="${look.theme}"><style>${styles}${figureSheet}</style><body>${drawn.join('')}</body></html>`,
    )
    process.stdout.write(`${await takePicture(page, `figure-${name}-${look.theme}`)}\n`)
  }
  await browser.close()
}
