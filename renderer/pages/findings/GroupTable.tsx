import { ageInWords } from '#words/breaks/groupName.ts'
import { linesOf } from '#words/findings/answerWords.ts'
import { treatmentWords } from '#words/findings/treatmentWords.ts'
import { percentWords } from '#words/units/numbers.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { HeadRow } from '../../widgets/tables/HeadRow.tsx'
import { treatmentOfMeans } from './findingsQuestions.ts'
import { ToBlocks } from './ToBlocks.tsx'
import type { FindingsView } from './view.ts'

const columns = ['n', 'Mean', 'Interval', 'SD', 'CV', 'Median', '5 % limit', 'Torn wood']

/** The groups of one age beside each other in numbers. */
export function GroupTable({ found, settings, ageMonths, name }: FindingsView) {
  const { strength } = useQuantities()
  const ranks = linesOf(found.lines, 'rank', ageMonths)
  const letters = linesOf(found.lines, 'letters', ageMonths).find(({ method }) => method === 'games-howell')
  const ranked = settings.asked === 'strongest'
  const shrunken = linesOf(found.lines, 'shrunken-mean', ageMonths).filter(({ meanMPa }) => meanMPa !== null)
  const drawn = ranked && shrunken.length > 0
  const rows = linesOf(found.lines, 'group-summary', ageMonths).toSorted(
    (one, other) => (other.meanMPa ?? -1) - (one.meanMPa ?? -1),
  )
  return (
    <section className="findings-table">
      <table className="data-table">
        <caption>
          Groups {ageInWords(ageMonths)}, torn wood {treatmentWords(treatmentOfMeans(settings))}, {strength.unit}; means
          and ranks with 95 % intervals
        </caption>
        <HeadRow
          words={['Group']}
          numbers={[...columns, ...(ranked ? ['Rank', 'Letters'] : []), ...(drawn ? ['Shrunken mean'] : [])]}
        />
        <tbody>
          {rows.map((row) => {
            const rank = ranks.find(({ group }) => group === row.group)
            return (
              <tr key={row.group}>
                <th scope="row">
                  <ToBlocks group={row.group} ageMonths={ageMonths}>
                    {name(row.group)}
                  </ToBlocks>
                </th>
                <td className="numeric">{row.excluded === 0 ? row.n : `${row.n} (${row.excluded} left out)`}</td>
                <td className="numeric">{strength.number(row.meanMPa)}</td>
                <td className="numeric">
                  {row.meanLowMPa === null
                    ? '–'
                    : `${strength.number(row.meanLowMPa)} to ${strength.number(row.meanHighMPa)}`}
                </td>
                <td className="numeric">{strength.number(row.sdMPa)}</td>
                <td className="numeric">{row.cvPercent === null ? '–' : percentWords(row.cvPercent)}</td>
                <td className="numeric">{strength.number(row.medianMPa)}</td>
                <td className="numeric">
                  {strength.number(row.lowerToleranceMPa === null ? null : Math.max(row.lowerToleranceMPa, 0))}
                </td>
                <td className="numeric">
                  {row.woodFailureMeanPercent === null ? '–' : percentWords(row.woodFailureMeanPercent)}
                </td>
                {ranked ? (
                  <>
                    <td className="numeric">
                      {rank === undefined || rank.rank === null
                        ? '–'
                        : `${rank.rank} (${rank.rankLow} to ${rank.rankHigh})`}
                    </td>
                    <td className="numeric">{letters?.letters[row.group] ?? '–'}</td>
                  </>
                ) : null}
                {drawn ? (
                  <td className="numeric">
                    {strength.number(shrunken.find(({ group }) => group === row.group)?.meanMPa ?? null)}
                  </td>
                ) : null}
              </tr>
            )
          })}
        </tbody>
      </table>
      <p className="prose quiet">
        5 % limit: with 75 % confidence, 95 % of such blocks are stronger.
        {ranked ? ' Groups that share a letter cannot be told apart (Games-Howell).' : ''}
        {drawn
          ? ' Shrunken mean: drawn towards the mean of all groups as far as its own noise asks for, for the highest of many means is partly luck.'
          : ''}
      </p>
    </section>
  )
}
