import { useState } from 'react'
import { Trouble, type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { FigureSize, Figure as Picture } from '#figures/drawing/figure.ts'
import { figurePage } from '#figures/drawing/figurePage.ts'
import { svgFile } from '#figures/drawing/svgText.ts'
import { figureFileName } from '#words/keeping/figureOrigin.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { saveFile } from '../files/saveFile.ts'
import { pngOfSvg } from './paintSvg.ts'
import { typefaceRules } from './typefaceRules.ts'
import './figureFileButtons.css'

/** In a document the figure is as wide as its text: 180 mm, at 300 dots to the inch. */
const documentSize: FigureSize = { widthPx: 700, emPx: 12.5 }
const printScale = 3

/** The one cause within reach of a person. */
const tooLarge: TroubleMessage = {
  code: 'internal',
  message: 'The figure could not be made into a file.',
  hint: 'Show fewer groups, or save it as SVG.',
}

export type SavedFigure = {
  draw(size: FigureSize): Picture | Promise<Picture>
  /** What stands below it; asked when it is saved. */
  origin(): string[]
  size?: FigureSize
}

/** Saves a figure as a file of its own, which says where it comes from. */
export function FigureFileButtons({ draw, origin, size = documentSize }: SavedFigure) {
  const [failed, setFailed] = useState<TroubleMessage | null>(null)
  async function save(kind: 'svg' | 'png'): Promise<void> {
    setFailed(null)
    try {
      const page = figurePage(await draw(size), origin())
      const name = `${figureFileName(page.title)}.${kind}`
      if (kind === 'png') saveFile(name, await pngOfSvg(svgFile(page), printScale), 'image/png')
      else saveFile(name, svgFile(page, await typefaceRules(svgFile(page))), 'image/svg+xml')
    } catch (thrown) {
      setFailed(thrown instanceof Trouble ? troubleFrom(thrown) : tooLarge)
    }
  }
  return (
    <div className="screen-only">
      <p className="figure-file-buttons">
        <button type="button" className="button button-small" onClick={() => void save('svg')}>
          Save as SVG
        </button>
        <button type="button" className="button button-small" onClick={() => void save('png')}>
          Save as PNG
        </button>
      </p>
      <Notice trouble={failed} />
    </div>
  )
}
