import { type AgeingPicture, ageingFigure, ageingKeysFigure } from '#figures/findings/ageingFigure.ts'
import { ageingMultiples } from '#figures/findings/ageingMultiples.ts'
import { drawnSeriesWords } from '#words/findings/ageingFigureWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Figure } from '../../../parts/Figure.tsx'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'
import { FigureFileButtons } from '../../../parts/figures/FigureFileButtons.tsx'

/** More beside each other nobody compares. */
const mostDrawn = 12

/** One series large, or several small beside each other on one scale with their signs explained once. */
export function AgeingFigures({ pictures, origin }: { pictures: readonly AgeingPicture[]; origin(): string[] }) {
  const { strength } = useQuantities()
  const shown = pictures.slice(0, mostDrawn)
  if (shown.length === 0) return null
  if (shown.length === 1)
    return <ExportedFigure draw={(size) => ageingFigure(shown[0]!, strength, size)} origin={origin} />
  const left = pictures.length > shown.length ? [drawnSeriesWords(shown.length, pictures.length)] : []
  return (
    <>
      <div className="findings-multiples">
        {shown.map((picture) => (
          <figure key={picture.name}>
            <figcaption>{picture.name}</figcaption>
            <Figure draw={(size) => ageingFigure(picture, strength, size)} />
          </figure>
        ))}
      </div>
      <Figure draw={(size) => ageingKeysFigure(shown, size)} />
      <FigureFileButtons
        draw={(size) => ageingMultiples(shown, strength, size)}
        origin={() => [...left, ...origin()]}
      />
      {left.length === 0 ? null : (
        <p className="prose quiet">
          {left} Choose an adhesive or an exposure to see others; the tables hold all{' '}
          {countOf(pictures.length, 'series', 'series')}.
        </p>
      )}
    </>
  )
}
