import { exposureClimateWords } from '#words/findings/climate/climateWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** What climate the blocks of these exposures saw, as far as a logger hung there. */
export function ClimateSentences({ exposures }: { exposures: readonly string[] }) {
  const quantities = useQuantities()
  const { value } = useAnswer('climate.exposures', {})
  const shown = (value ?? []).filter(({ exposure }) => exposures.includes(exposure))
  if (shown.length === 0) return null
  return (
    <section className="findings-climate" aria-label="Climate">
      {shown.map((one) => (
        <p key={one.exposure} className="prose">
          {exposureClimateWords(one, quantities)}
        </p>
      ))}
    </section>
  )
}
