import type { FindingsSettings } from '#contract/findings/keptFinding.ts'
import type { FindingsOptions } from '#contract/findings/options.ts'
import { filterOf } from '#domain/findings/askedBlocks.ts'
import { woodStrengthFigure } from '#figures/findings/woodStrengthFigure.ts'
import { ageInWords } from '#words/breaks/groupName.ts'
import { linesOf, treatmentAnswers } from '#words/findings/answerWords.ts'
import { basisSentence, eachTreatmentWords, methodWords } from '#words/findings/basisWords.ts'
import { movedWords, treatedName } from '#words/findings/treatmentWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'
import { treatmentOf } from '../findingsQuestions.ts'
import { useOrigin } from '../useOrigin.ts'
import type { FindingsView } from '../view.ts'
import { allTreatments, type TreatedMean, type TreatedRow, treatmentRows } from './treatmentRows.ts'
import { WeibullOfGroup } from './WeibullOfGroup.tsx'

/** The groups under every treatment of torn wood, and the blocks behind that. */
export function TornWoodAnswer({ rows, ...view }: FindingsView & { rows: readonly TreatedRow[] }) {
  const { found, settings, ageMonths, name } = view
  const { strength } = useQuantities()
  const origin = useOrigin(view, 'as observed')
  const { limitPercent } = treatmentOf(settings)
  const groupOf = new Map(found.groups.map((group) => [group.key, group]))
  const blocks = found.blocks.filter((one) => one.ageMonths === ageMonths && one.excludedBecause === null)
  const names = treatmentNames(settings)
  return (
    <>
      <TreatmentTable rows={rows} names={names} name={name} />
      <ExportedFigure
        draw={(size) =>
          woodStrengthFigure(
            blocks.map((block) => ({
              ...{ name: `${block.number} (${name(block.group)})`, strengthMPa: block.strengthMPa },
              ...{ woodFailurePercent: block.woodFailurePercent, jointType: groupOf.get(block.group)?.jointType ?? '' },
            })),
            limitPercent,
            strength,
            size,
          )
        }
        origin={origin}
      />
      <WeibullOfGroup {...view} />
    </>
  )
}

const treatmentNames = (settings: FindingsSettings) =>
  allTreatments.map((one) => treatedName({ ...treatmentOf(settings), ...one }))

/** How the ranking hangs on what torn wood is taken for, in sentences. */
export function tornWoodSentences(rows: readonly TreatedRow[], view: FindingsView): string[] {
  const { found, settings, ageMonths, name } = view
  const here = found.blocks.filter((one) => one.ageMonths === ageMonths)
  const summaries = [...Map.groupBy(here, ({ group }) => group).values()].map((blocks) => {
    const n = blocks.filter(({ excludedBecause }) => excludedBecause === null).length
    return { n, excluded: blocks.length - n }
  })
  const basis = basisSentence(summaries, {
    ...{ age: ageInWords(ageMonths), treatment: eachTreatmentWords, method: methodWords['torn-wood'] },
  })
  return [...treatmentAnswers(rows, treatmentNames(settings), name), basis]
}

/** Means of all groups at the age that is looked at, under every treatment; null until all are there, or where nobody asks for them. */
export function useTreatedRows({ found, settings, ageMonths }: FindingsView): TreatedRow[] | null {
  const filter = filterOf(settings)
  const { limitPercent, adjustFactor } = treatmentOf(settings)
  const asked = (woodFailure: FindingsOptions['woodFailure'], ...only: FindingsOptions['only'] & {}) =>
    settings.asked === 'torn-wood' ? { options: { woodFailure, limitPercent, adjustFactor, only }, filter } : null
  const answers = {
    observed: useAnswer('findings.of', asked('observed', 'group-summary', 'censored-fit')).value,
    'bond-only': useAnswer('findings.of', asked('bond-only', 'group-summary')).value,
    adjusted: useAnswer('findings.of', asked('adjusted', 'group-summary')).value,
  }
  const { observed, 'bond-only': bondOnly, adjusted } = answers
  if (observed === null || bondOnly === null || adjusted === null) return null
  const means = allTreatments.map(({ woodFailure, distribution }) => {
    const lines =
      woodFailure === 'censored'
        ? linesOf(observed.lines, 'censored-fit', ageMonths).filter((one) => one.distribution === distribution)
        : linesOf(answers[woodFailure]?.lines ?? [], 'group-summary', ageMonths)
    return new Map(
      lines.map(({ group, meanMPa, meanLowMPa, meanHighMPa }): [string, TreatedMean] => [
        group,
        { meanMPa, lowMPa: meanLowMPa, highMPa: meanHighMPa },
      ]),
    )
  })
  const here = new Set(found.blocks.filter((one) => one.ageMonths === ageMonths).map(({ group }) => group))
  return treatmentRows(
    found.groups.map(({ key }) => key).filter((key) => here.has(key)),
    means,
  )
}

function TreatmentTable({
  rows,
  names,
  name,
}: {
  rows: readonly TreatedRow[]
  names: readonly string[]
  name(group: string): string
}) {
  const { strength } = useQuantities()
  return (
    <div className="findings-table">
      <table className="data-table">
        <caption>Place of each group by its mean under each treatment of torn wood; means in {strength.unit}</caption>
        <thead>
          <tr>
            <th scope="col">Group</th>
            {names.map((treatment) => (
              <th key={treatment} scope="col" className="numeric treatment-head">
                {treatment}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ group, cells }) => (
            <tr key={group}>
              <th scope="row">{name(group)}</th>
              {cells.map(({ place, up, meanMPa }, at) => (
                <td key={names[at]} className="numeric" data-moved={up === null || up === 0 ? undefined : ''}>
                  {place === null ? '–' : `${place}${movedWords(up)}`}
                  <span className="quiet treatment-mean">{strength.number(meanMPa)}</span>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
