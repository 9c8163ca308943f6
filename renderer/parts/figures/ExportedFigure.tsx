import type { FigureSize, Figure as Picture } from '#figures/drawing/figure.ts'
import { Figure } from '../Figure.tsx'
import { FigureFileButtons } from './FigureFileButtons.tsx'
import './exportedFigure.css'

/** A figure that can be saved as a file of its own. `origin` is asked when it is saved. */
export function ExportedFigure({ draw, origin }: { draw(size: FigureSize): Picture; origin(): string[] }) {
  return (
    <div className="exported-figure">
      <Figure draw={draw} />
      <FigureFileButtons draw={draw} origin={origin} />
    </div>
  )
}
