import type { BreakSummary } from '#contract/breaks/break.ts'
import { signedNumber } from '#words/units/numbers.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'

/** What counts now and what will count, each with its strength where it has one. */
export function BeforeAfter({
  now,
  thenN,
  thenAreaMm2,
  unknown,
}: {
  now: Pick<BreakSummary, 'peakN' | 'strengthMPa'>
  thenN: number | null
  /** null: not known, or what will count is no break and has no strength. */
  thenAreaMm2: number | null
  /** Said in place of what will count while it is not known. */
  unknown: string
}) {
  const { force, strength } = useQuantities()
  const nowN = now.peakN
  const thenMPa = thenN === null || thenAreaMm2 === null ? null : thenN / thenAreaMm2
  const words = (loadN: number | null, strengthMPa: number | null) =>
    strengthMPa === null ? force.text(loadN) : `${force.text(loadN)}, ${strength.text(strengthMPa)}`
  const differenceN = nowN === null || thenN === null ? null : thenN - nowN
  return (
    <dl className="facts before-after" aria-live="polite">
      <div>
        <dt>Counts now</dt>
        <dd>{words(nowN, now.strengthMPa)}</dd>
      </div>
      <div>
        <dt>Will count</dt>
        <dd>{thenN === null ? unknown : <strong>{words(thenN, thenMPa)}</strong>}</dd>
      </div>
      <div>
        <dt>Difference</dt>
        <dd>
          {differenceN === null
            ? '–'
            : `${signedNumber(differenceN * force.factor, 1)}\u00a0${force.unit}${nowN ? ` (${signedNumber((100 * differenceN) / nowN, 2)}\u00a0%)` : ''}`}
        </dd>
      </div>
    </dl>
  )
}
