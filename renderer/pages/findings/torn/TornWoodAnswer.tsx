import type { FindingsOptions } from '#contract/findings/options.ts'
import { woodStrengthFigure } from '#figures/findings/woodStrengthFigure.ts'
import { linesOf, treatmentAnswers } from '#words/findings/answerWords.ts'
import { movedWords, treatedName } from '#words/findings/treatmentWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'
import { filterOf, treatmentOf } from '../findingsQuestions.ts'
import { useOrigin } from '../useOrigin.ts'
import type { FindingsView } from '../view.ts'
import { allTreatments, type TreatedMean, type TreatedRow, treatmentRows } from './treatmentRows.ts'
import { WeibullOfGroup } from './WeibullOfGroup.tsx'

/** How the ranking hangs on what torn wood is taken for: the groups under every treatment, and the blocks behind that. */
export function TornWoodAnswer(view: FindingsView) {
  const { found, settings, ageMonths, name } = view
  const { strength } = useQuantities()
  const origin = useOrigin(view, 'as observed')
  const { limitPercent, adjustFactor } = treatmentOf(settings)
  const rows = useTreatedRows(view)
  if (rows === null) return null
  const groupOf = new Map(found.groups.map((group) => [group.key, group]))
  const blocks = found.blocks.filter((one) => one.ageMonths === ageMonths && one.excludedBecause === null)
  const names = allTreatments.map((one) => treatedName({ ...one, limitPercent, adjustFactor }))
  return (
    <>
      {treatmentAnswers(rows, names, name).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
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

/** Means of all groups at the age that is looked at, under every treatment; null until all are there. */
function useTreatedRows({ found, settings, ageMonths }: FindingsView): TreatedRow[] | null {
  const filter = filterOf(settings)
  const { limitPercent, adjustFactor } = treatmentOf(settings)
  const asked = (woodFailure: FindingsOptions['woodFailure'], ...only: FindingsOptions['only'] & {}) => ({
    ...{ options: { woodFailure, limitPercent, adjustFactor, only }, filter },
  })
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
