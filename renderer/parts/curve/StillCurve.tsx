import { loadCurveTitle } from '#words/breaks/curveWords.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { ExportedFigure } from '../figures/ExportedFigure.tsx'
import { curvePicture, wholeCurve } from './curvePicture.ts'
import { useCurveOrigin } from './useCurveOrigin.ts'
import './curve.css'

/** The whole curve of a break with what its evaluation in force says of it, as a figure. It is zoomed on the break's own page. */
export function StillCurve({ breakId }: { breakId: number }) {
  const quantities = useQuantities()
  const originOf = useCurveOrigin()
  const { value: record, error } = useAnswer('breaks.get', { breakId })
  const curve = useAnswer('breaks.curve', { breakId, ...wholeCurve })
  return (
    <section className="still-curve">
      <Notice trouble={error ?? curve.error} />
      {record === null || curve.value === null || curve.value.timeS.length === 0 ? null : (
        <>
          <h3>{loadCurveTitle(record.summary)}</h3>
          <ExportedFigure draw={curvePicture(record, curve.value, quantities)} origin={() => originOf(record)} />
        </>
      )}
    </section>
  )
}
