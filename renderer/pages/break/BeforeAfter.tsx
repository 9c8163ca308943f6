import { useQuantities } from '#renderer/widgets/quantities.ts'
import { signedNumber } from '../calibrationWords.ts'

/** What counts now and what will count, with the strength where the area is known. */
export function BeforeAfter({
  nowN,
  thenN,
  areaMm2,
  unknown,
}: {
  nowN: number | null
  thenN: number | null
  areaMm2: number | null
  /** Said in place of what will count while it is not known. */
  unknown: string
}) {
  const { force, strength } = useQuantities()
  const words = (loadN: number | null) => {
    const strengthMPa = loadN === null || areaMm2 === null ? null : loadN / areaMm2
    return strengthMPa === null ? force.text(loadN) : `${force.text(loadN)}, ${strength.text(strengthMPa)}`
  }
  const differenceN = nowN === null || thenN === null ? null : thenN - nowN
  return (
    <dl className="facts before-after" aria-live="polite">
      <div>
        <dt>Counts now</dt>
        <dd>{words(nowN)}</dd>
      </div>
      <div>
        <dt>Will count</dt>
        <dd>{thenN === null ? unknown : <strong>{words(thenN)}</strong>}</dd>
      </div>
      <div>
        <dt>Difference</dt>
        <dd>
          {differenceN === null
            ? '–'
            : `${signedNumber(differenceN * force.factor, 1)} ${force.unit}${nowN ? ` (${signedNumber((100 * differenceN) / nowN, 2)} %)` : ''}`}
        </dd>
      </div>
    </dl>
  )
}
