import type { BreakRecord } from '#contract/breaks/break.ts'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { loadCurveFigure } from '#figures/breaks/loadCurveFigure.ts'
import type { FigureSize, Figure as Picture } from '#figures/drawing/figure.ts'
import { loadCurveTitle } from '#words/breaks/curveWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { Figure } from '../Figure.tsx'
import { isInCounts, sceneInForce } from './sceneInForce.ts'
import './curve.css'

/** As many samples as a figure of the widest window shows apart. */
const maxPoints = 4000

/** The whole curve of a break with what its evaluation in force says of it, as a figure. It is zoomed on the break's own page. */
export function StillCurve({ breakId }: { breakId: number }) {
  const quantities = useQuantities()
  const record = useAnswer('breaks.get', { breakId })
  const curve = useAnswer('breaks.curve', { breakId, maxPoints, fromS: null, toS: null })
  return (
    <section className="still-curve">
      <Notice trouble={record.error ?? curve.error} />
      {record.value === null || curve.value === null || curve.value.timeS.length === 0 ? null : (
        <>
          <h3>{loadCurveTitle(record.value.summary)}</h3>
          <Figure draw={drawn(record.value, curve.value, quantities)} />
        </>
      )}
    </section>
  )
}

function drawn(record: BreakRecord, curve: ForceCurve, quantities: Quantities): (size: FigureSize) => Picture {
  const { unit, factor } = quantities.force
  const loadCurve = {
    title: loadCurveTitle(record.summary),
    curve,
    scene: sceneInForce(record, curve, { chosen: null, seatedLine: false }, quantities),
    shown: isInCounts(record)
      ? { name: 'reading' as const, unit: 'counts', factor: 1 }
      : { name: 'load' as const, unit, factor },
    heightEm: 22,
  }
  return (size) => loadCurveFigure(loadCurve, size)
}
