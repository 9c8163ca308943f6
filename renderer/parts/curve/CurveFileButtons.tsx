import type { BreakRecord } from '#contract/breaks/break.ts'
import { useHost } from '../../host/hostContext.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { FigureFileButtons } from '../figures/FigureFileButtons.tsx'
import { curvePicture, wholeCurve } from './curvePicture.ts'
import { useCurveOrigin } from './useCurveOrigin.ts'

/** Saves the whole curve of a break, with its marks, as a file of its own. */
export function CurveFileButtons({ record }: { record: BreakRecord }) {
  const { client } = useHost()
  const quantities = useQuantities()
  const originOf = useCurveOrigin()
  const { breakId } = record.summary
  return (
    <FigureFileButtons
      draw={async (size) => {
        const curve = await client.call('breaks.curve', { breakId, ...wholeCurve })
        return curvePicture(record, curve, quantities)(size)
      }}
      origin={() => originOf(record)}
    />
  )
}
