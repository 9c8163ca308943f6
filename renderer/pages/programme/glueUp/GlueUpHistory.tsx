import type { GlueUpRecord } from '#contract/programme/glueUpProcedures.ts'
import { instantWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { changedFacts } from './glueUpFacts.ts'

/** What of a glue-up was corrected, newest first: what stood there before, who changed it, and why. */
export function GlueUpHistory({ entered, corrections }: Pick<GlueUpRecord, 'entered' | 'corrections'>) {
  const quantities = useQuantities()
  if (entered === null) return null
  const versions = [entered, ...corrections.map(({ fields }) => fields)]
  return (
    <section aria-labelledby="corrections-title">
      <h2 id="corrections-title">Corrections</h2>
      <ol className="history">
        {corrections
          .map((one, at) => (
            <li key={one.glueUpCorrectionId}>
              <p>
                <strong>Corrected</strong> {instantWords(one.recordedAt)} by {one.by}: {one.reason}
              </p>
              <p className="quiet">Before: {changedFacts(versions[at]!, one.fields, quantities)}</p>
            </li>
          ))
          .toReversed()}
      </ol>
    </section>
  )
}
