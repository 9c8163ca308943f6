import { useState } from 'react'
import type { FigureSize, Figure as Picture } from '#figures/drawing/figure.ts'
import { figurePage } from '#figures/drawing/figurePage.ts'
import { svgFile } from '#figures/drawing/svgText.ts'
import { figureFileName } from '#words/findings/originWords.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { Figure } from '../Figure.tsx'
import { saveFile } from '../files/saveFile.ts'
import { pngOfSvg } from './paintSvg.ts'
import { typefaceRules } from './typefaceRules.ts'
import './exportedFigure.css'

/** In a document the figure is as wide as its text: 180 mm, at 300 dots to the inch. */
const fileSize: FigureSize = { widthPx: 700, emPx: 12.5 }
const printScale = 3

/** A figure that can be saved as a file of its own, which says where it comes from. `origin` is asked when it is saved. */
export function ExportedFigure({ draw, origin }: { draw(size: FigureSize): Picture; origin(): string[] }) {
  const [failed, setFailed] = useState(false)
  async function save(kind: 'svg' | 'png'): Promise<void> {
    const page = figurePage(draw(fileSize), origin())
    const name = `${figureFileName(page.title)}.${kind}`
    setFailed(false)
    try {
      if (kind === 'png') saveFile(name, await pngOfSvg(svgFile(page), printScale), 'image/png')
      else saveFile(name, svgFile(page, await typefaceRules(svgFile(page))), 'image/svg+xml')
    } catch {
      // The one cause within reach of a person is a figure too large; the button says what to do
      setFailed(true)
    }
  }
  return (
    <div className="exported-figure">
      <Figure draw={draw} />
      <p className="exported-buttons screen-only">
        <button type="button" className="button button-small" onClick={() => void save('svg')}>
          Save as SVG
        </button>
        <button type="button" className="button button-small" onClick={() => void save('png')}>
          Save as PNG
        </button>
      </p>
      <Notice
        trouble={
          failed
            ? {
                code: 'internal',
                message: 'The figure could not be made into a file.',
                hint: 'Show fewer groups, or save it as SVG.',
              }
            : null
        }
      />
    </div>
  )
}
