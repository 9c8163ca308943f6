import { type AgeingPicture, ageingFigure, ageingKeysFigure } from '#figures/findings/ageingFigure.ts'
import { countOf, ofWords } from '#words/units/counts.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Figure } from '../../../parts/Figure.tsx'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'

/** More beside each other nobody compares. */
const mostDrawn = 12

/** One series large, or several small beside each other on one scale with their signs explained once. */
export function AgeingFigures({ pictures, origin }: { pictures: readonly AgeingPicture[]; origin(): string[] }) {
  const { strength } = useQuantities()
  const shown = pictures.slice(0, mostDrawn)
  if (shown.length === 0) return null
  if (shown.length === 1)
    return <ExportedFigure draw={(size) => ageingFigure(shown[0]!, strength, size)} origin={origin} />
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
      {pictures.length > shown.length ? (
        <p className="prose quiet">
          {ofWords(shown.length, pictures.length)} series are drawn. Choose an adhesive or an exposure to see others;{' '}
          the tables hold all {countOf(pictures.length, 'series', 'series')}.
        </p>
      ) : null}
    </>
  )
}
