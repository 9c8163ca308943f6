import { groupStrip } from '#figures/findings/groupStrip.ts'
import { asGoodAnswer, linesOf, strongestAnswer } from '#words/findings/answerWords.ts'
import { treatmentWords } from '#words/findings/treatmentWords.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { ExportedFigure } from '../../parts/figures/ExportedFigure.tsx'
import { treatmentOfMeans } from './findingsQuestions.ts'
import { Ranking } from './Ranking.tsx'
import { TornWoodAnswer } from './torn/TornWoodAnswer.tsx'
import { useOrigin } from './useOrigin.ts'
import type { FindingsView } from './view.ts'

/** The answer in a sentence for each group that it is about, and every block at its strength. */
export function Answer(view: FindingsView) {
  const { found, settings, ageMonths, name } = view
  const { strength } = useQuantities()
  const origin = useOrigin(view, treatmentWords(treatmentOfMeans(settings)))
  const summaries = linesOf(found.lines, 'group-summary', ageMonths)
  const strips = found.groups
    .map(({ key }) => ({
      name: name(key),
      meanMPa: summaries.find(({ group }) => group === key)?.meanMPa ?? null,
      blocks: found.blocks
        .filter((one) => one.group === key && one.ageMonths === ageMonths && one.excludedBecause === null)
        .map(({ number, strengthMPa, woodFailurePercent }) => ({
          name: number,
          strengthMPa,
          lowerLimit: false,
          woodFailurePercent,
        })),
    }))
    .filter(({ blocks }) => blocks.length > 0)
    .sort((one, other) => (other.meanMPa ?? -1) - (one.meanMPa ?? -1))
  return (
    <section aria-label="Answer" className="findings-answer">
      {settings.asked === 'torn-wood' ? (
        <TornWoodAnswer {...view} />
      ) : (
        sentencesOf(view).map((sentence) => <p key={sentence}>{sentence}</p>)
      )}
      {settings.asked === 'strongest' ? <Ranking {...view} /> : null}
      <ExportedFigure draw={(size) => groupStrip(strips, strength, size)} origin={origin} />
    </section>
  )
}

function sentencesOf({ found, settings, ageMonths, name }: FindingsView): string[] {
  const { lines } = found
  if (settings.asked === 'as-good') {
    const differences = linesOf(lines, 'against-reference', ageMonths)
    if (differences.length === 0)
      return ['Choose the group that the others are to be held against; it needs blocks at this age.']
    return differences.map((difference) =>
      asGoodAnswer(
        difference,
        linesOf(lines, 'equivalence', ageMonths).find(
          ({ a, b }) => a === difference.group && b === difference.reference,
        ),
        name,
      ),
    )
  }
  return [strongestAnswer(linesOf(lines, 'rank', ageMonths), name)]
}
