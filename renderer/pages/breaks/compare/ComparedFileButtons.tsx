import { comparedAbout } from '#words/breaks/compare/comparedFigureWords.ts'
import { isSimulated } from '#words/keeping/demoWords.ts'
import { simulatedShare } from '#words/keeping/figureOrigin.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { FigureFileButtons } from '../../../parts/figures/FigureFileButtons.tsx'
import { useFigureOrigin } from '../../../parts/figures/useFigureOrigin.ts'
import { type ComparedView, comparedPicture } from './comparedPicture.ts'

/** Saves compared curves as a file of its own, once all of them are there. */
export function ComparedFileButtons(view: ComparedView) {
  const quantities = useQuantities()
  const originOf = useFigureOrigin()
  const breakIds = view.curves.map(({ key }) => key)
  if (breakIds.length === 0 || breakIds.length < view.comparison.curves.length) return null
  return (
    <FigureFileButtons
      draw={comparedPicture(view, quantities)}
      origin={() => {
        const simulated = breakIds.filter((breakId) => isSimulated(view.loaded.get(breakId)?.record.summary ?? {}))
        return originOf(comparedAbout(breakIds), simulatedShare(simulated.length, breakIds.length))
      }}
    />
  )
}
