import { conditionKey } from '#domain/findings/askedBlocks.ts'
import { treatedBlocks } from '#domain/findings/observation.ts'
import { type OverallRow, overallTable } from '#domain/findings/overallTable.ts'
import { overallFigure } from '#figures/findings/overallFigure.ts'
import { ageInWords } from '#words/breaks/groupName.ts'
import { linesOf } from '#words/findings/answerWords.ts'
import { basisSentence, methodWords } from '#words/findings/basisWords.ts'
import { overallIntro, ratioWords, standingWords, weightWords } from '#words/findings/overallWords.ts'
import { treatmentWords } from '#words/findings/treatmentWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'
import { treatmentOfMeans } from '../findingsQuestions.ts'
import { useOrigin } from '../useOrigin.ts'
import type { FindingsView } from '../view.ts'
import { type NamedCondition, namedConditions } from './overallConditions.ts'

const confidence = 0.95

/** Standing of every adhesive beside the reference, over the conditions that have a weight, with each condition by itself. */
export function overallView({ found, settings, ageMonths }: FindingsView, lengthText: (mm: number) => string) {
  const { overall } = settings
  const all = namedConditions(found.groups, overall, lengthText)
  const conditions = all.filter(({ weight }) => weight > 0)
  const groupOf = new Map(found.groups.map((group) => [group.key, group]))
  const counted = found.blocks.filter((one) => one.ageMonths === ageMonths && one.excludedBecause === null)
  const blocks = treatedBlocks(counted, treatmentOfMeans(settings)).flatMap(({ block, strengthMPa }) => {
    const group = groupOf.get(block.group)
    return group === undefined ? [] : [{ adhesive: group.adhesive, condition: conditionKey(group), strengthMPa }]
  })
  const nameOf = new Map(conditions.map(({ key, name }) => [key, name]))
  const rows = overall.reference === '' ? [] : overallTable(blocks, conditions, overall.reference, confidence)
  const standings = rows.map(({ adhesive, overall: { ratio, low, high, missing } }) => ({
    ...{ adhesive, ratio, low, high },
    missing: missing.map((key) => nameOf.get(key) ?? key),
  }))
  const weighed = new Set(found.groups.filter((group) => nameOf.has(conditionKey(group))).map(({ key }) => key))
  const summaries = linesOf(found.lines, 'group-summary', ageMonths).filter(({ group }) => weighed.has(group))
  return { conditions, rows, standings, summaries }
}

const basisOf = ({ settings, ageMonths }: FindingsView) => ({
  age: ageInWords(ageMonths),
  treatment: treatmentWords(treatmentOfMeans(settings)),
})

/** The answer in sentences, as it is shown and as it is kept. */
export function overallSentences(view: FindingsView, lengthText: (mm: number) => string): string[] {
  const { reference } = view.settings.overall
  if (reference === '') return ['Choose the adhesive that the others are to be held against.']
  const { conditions, standings, summaries } = overallView(view, lengthText)
  if (conditions.length === 0) return ['Give a condition a weight above 0.']
  const basis = basisSentence(summaries, { ...basisOf(view), method: methodWords.overall })
  return [overallIntro(conditions, reference), ...standings.map((one) => standingWords(one, reference)), basis]
}

/** The figure and the table below the sentences; nothing until a reference is chosen. */
export function OverallAnswer(view: FindingsView) {
  const { settings } = view
  const { length } = useQuantities()
  const origin = useOrigin(view, treatmentWords(treatmentOfMeans(settings)))
  const { reference } = settings.overall
  const { conditions, rows, standings, summaries } = overallView(view, length.text)
  const { age, treatment } = basisOf(view)
  if (reference === '' || conditions.length === 0 || rows.length === 0) return null
  return (
    <>
      <ExportedFigure
        draw={(size) => overallFigure(standings, reference, size)}
        origin={() => [
          overallIntro(conditions, reference),
          basisSentence(summaries, { ...basisOf(view), method: methodWords.overall }),
          ...origin(),
        ]}
      />
      <OverallTable
        caption={`Strength as a share of ${reference}, ${age}, torn wood ${treatment}, with 95 % intervals`}
        conditions={conditions}
        rows={rows}
      />
    </>
  )
}

function OverallTable({
  caption,
  conditions,
  rows,
}: {
  caption: string
  conditions: readonly NamedCondition[]
  rows: readonly OverallRow[]
}) {
  return (
    <div className="findings-table">
      <table className="data-table">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Adhesive</th>
            <th scope="col" className="numeric">
              Overall
            </th>
            {conditions.map(({ key, name, weight }) => (
              <th key={key} scope="col" className="numeric treatment-head">
                {name} <span className="quiet">{weightWords(weight)}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ adhesive, overall, conditions: each }) => (
            <tr key={adhesive}>
              <th scope="row">{adhesive}</th>
              <td className="numeric">{ratioWords(overall)}</td>
              {each.map((one, at) => (
                <td key={conditions[at]!.key} className="numeric">
                  {one.ratio === null ? 'missing' : ratioWords(one)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
