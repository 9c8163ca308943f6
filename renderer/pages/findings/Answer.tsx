import { groupStrip } from '#figures/findings/groupStrip.ts'
import { ageInWords } from '#words/breaks/groupName.ts'
import { asGoodAnswer, linesOf, strongestAnswer } from '#words/findings/answerWords.ts'
import { basisSentence, methodWords } from '#words/findings/basisWords.ts'
import { treatmentWords } from '#words/findings/treatmentWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { ExportedFigure } from '../../parts/figures/ExportedFigure.tsx'
import { treatmentOfMeans } from './findingsQuestions.ts'
import { KeepFinding } from './kept/KeepFinding.tsx'
import { OverallAnswer, overallSentences } from './overall/OverallAnswer.tsx'
import { Ranking } from './Ranking.tsx'
import { TornWoodAnswer, tornWoodSentences, useTreatedRows } from './torn/TornWoodAnswer.tsx'
import type { TreatedRow } from './torn/treatmentRows.ts'
import { useOrigin } from './useOrigin.ts'
import type { FindingsView } from './view.ts'

/** The answer in a sentence for each group that it is about, and every block at its strength. */
export function Answer(view: FindingsView) {
  const { found, settings, ageMonths, name } = view
  const { strength, length } = useQuantities()
  const origin = useOrigin(view, treatmentWords(treatmentOfMeans(settings)))
  const treated = useTreatedRows(view)
  const sentences = sentencesOf(view, treated, { length, strength })
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
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {sentences.length === 0 ? null : <KeepFinding settings={settings} said={sentences} />}
      {settings.asked === 'strongest' ? <Ranking {...view} /> : null}
      {settings.asked === 'overall' ? <OverallAnswer {...view} /> : null}
      {treated === null ? null : <TornWoodAnswer {...view} rows={treated} />}
      <ExportedFigure draw={(size) => groupStrip(strips, strength, size)} origin={origin} />
    </section>
  )
}

/** The answer in sentences; none while it is worked out. */
function sentencesOf(
  view: FindingsView,
  treated: readonly TreatedRow[] | null,
  { length, strength }: Pick<Quantities, 'length' | 'strength'>,
): string[] {
  const { found, settings, ageMonths, name } = view
  const { lines } = found
  if (settings.asked === 'torn-wood') return treated === null ? [] : tornWoodSentences(treated, view)
  if (settings.asked === 'overall') return overallSentences(view, length.text)
  const basis = (method: string) =>
    basisSentence(linesOf(lines, 'group-summary', ageMonths), {
      ...{ age: ageInWords(ageMonths), treatment: treatmentWords(treatmentOfMeans(settings)), method },
    })
  if (settings.asked === 'as-good') {
    const differences = linesOf(lines, 'against-reference', ageMonths)
    if (differences.length === 0)
      return ['Choose the group that the others are to be held against; it needs blocks at this age.']
    const alike = linesOf(lines, 'equivalence', ageMonths)
    return [
      ...differences.map((difference) => {
        const pair = alike.find(({ a, b }) => a === difference.group && b === difference.reference)
        return asGoodAnswer(difference, pair, name, strength)
      }),
      basis(methodWords['as-good']),
    ]
  }
  return [strongestAnswer(linesOf(lines, 'rank', ageMonths), name), basis(methodWords.strongest)]
}
