import type { AgeingAnswer, BoardsAtAge } from '#contract/findings/ageing.ts'
import { atAge } from '#words/findings/ageingFigureWords.ts'
import { chance, chanceWords, modelName, retentionWords } from '#words/findings/ageingWords.ts'
import { linesOf } from '#words/findings/answerWords.ts'
import { failureWords } from '#words/findings/findingText.ts'
import { percentWords, signedNumber, writeFixed } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { HeadRow } from '../../../widgets/tables/HeadRow.tsx'
import { ToBlocks } from '../ToBlocks.tsx'
import type { FindingsView } from '../view.ts'

/** Every series at every age, with its share of the first strength. */
export function StrengthsTable({ found, name }: FindingsView) {
  const { strength } = useQuantities()
  const retentions = linesOf(found.lines, 'retention')
  const rows = linesOf(found.lines, 'group-summary').filter(({ ageMonths }) => ageMonths !== null)
  return (
    <section className="findings-table">
      <table className="data-table">
        <caption>Strength over age, {strength.unit}; means and shares with 95 % intervals</caption>
        <HeadRow words={['Group', 'Age']} numbers={['n', 'Mean', 'Interval', 'SD', 'Share of the first']} />
        <tbody>
          {rows.map((row) => {
            const share = retentions.find(({ group, ageMonths }) => group === row.group && ageMonths === row.ageMonths)
            return (
              <tr key={`${row.group} ${row.ageMonths}`}>
                <th scope="row">
                  <ToBlocks group={row.group} ageMonths={row.ageMonths}>
                    {name(row.group)}
                  </ToBlocks>
                </th>
                <td>{atAge(row.ageMonths!)}</td>
                <td className="numeric">{row.excluded === 0 ? row.n : `${row.n} (${row.excluded} left out)`}</td>
                <td className="numeric">{strength.number(row.meanMPa)}</td>
                <td className="numeric">
                  {row.meanLowMPa === null
                    ? '–'
                    : `${strength.number(row.meanLowMPa)} to ${strength.number(row.meanHighMPa)}`}
                </td>
                <td className="numeric">{strength.number(row.sdMPa)}</td>
                <td className="numeric">{share === undefined ? '–' : retentionWords(share)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}

/** The course of each series: tests of trend, its slope alone and helped by the others, and the chance of falling below the share asked for. */
export function LinesTable({ view: { found, name }, ageing }: { view: FindingsView; ageing: AgeingAnswer }) {
  const { strength } = useQuantities()
  const trends = linesOf(found.lines, 'trend')
  const rows = ageing.series.filter(({ agesMonths }) => agesMonths.length > 1)
  const asked = ageing.series.find(({ below }) => below !== null)?.below
  const below = asked === undefined || asked === null ? null : `Below ${percentWords(asked.sharePercent)}`
  if (rows.length === 0) return null
  return (
    <section className="findings-table">
      <table className="data-table">
        <caption>
          Course of each series: slope by Sen, tests of trend, and the change a year alone and helped by the others,
          with 95 % intervals
        </caption>
        <HeadRow
          words={['Group']}
          numbers={[
            `${strength.unit} a year`,
            'Mann-Kendall p',
            'Jonckheere p',
            'Alone, a year',
            'Together, a year',
            'Drawn',
            ...(below === null ? [] : [below]),
          ]}
        />
        <tbody>
          {rows.map((row) => {
            const [kendall, jonckheere] = (['mann-kendall', 'jonckheere'] as const).map((test) =>
              trends.find((line) => line.group === row.group && line.test === test),
            )
            const slope = ageing.together?.series.find(({ group }) => group === row.group)
            const perYear = kendall?.slopeMPaPerYear ?? null
            return (
              <tr key={row.group}>
                <th scope="row">
                  <ToBlocks group={row.group} ageMonths={row.agesMonths[0]!}>
                    {name(row.group)}
                  </ToBlocks>
                </th>
                <td className="numeric">{perYear === null ? '–' : signedNumber(perYear * strength.factor, 2)}</td>
                <td className="numeric">{chance(kendall?.p ?? null)}</td>
                <td className="numeric">{chance(jonckheere?.p ?? null)}</td>
                <td className="numeric">
                  {slope === undefined ? '–' : `${signedNumber(slope.ownPercentPerYear, 1)} %`}
                </td>
                <td className="numeric">
                  {slope === undefined
                    ? '–'
                    : `${signedNumber(slope.percentPerYear, 1)} % (${signedNumber(slope.lowPercentPerYear, 1)} to ${signedNumber(slope.highPercentPerYear, 1)})`}
                </td>
                <td className="numeric">{slope === undefined ? '–' : percentWords(100 * slope.shrinkage)}</td>
                {below === null ? null : (
                  <td className="numeric">
                    {row.below === null
                      ? '–'
                      : `${chanceWords(row.below.probability)} at ${atAge(row.below.ageMonths)}`}
                  </td>
                )}
              </tr>
            )
          })}
        </tbody>
      </table>
      <p className="prose quiet">
        Drawn: how far the slope of a series is drawn to the common one, 0 % not at all.
        {below === null ? '' : ` ${below}: the chance that the mean lies below that share of its first one.`}
      </p>
    </section>
  )
}

const models = ['constant', 'linear', 'log-time', 'square-root-time', 'exponential-approach'] as const

/** The weight of each model of ageing by AICc, or why it was not fitted. */
export function ModelsTable({ found, name }: FindingsView) {
  const lines = linesOf(found.lines, 'ageing-model')
  const groups = [...new Set(lines.map(({ group }) => group))]
  if (groups.length === 0) return null
  const failed = [...new Set(lines.flatMap((line) => (line.failed === null ? [] : [line.failed])))]
  return (
    <section className="findings-table">
      <table className="data-table">
        <caption>Models of ageing compared by AICc: weight, and AICc (the smaller the better)</caption>
        <HeadRow words={['Group']} numbers={models.map(modelName)} />
        <tbody>
          {groups.map((group) => (
            <tr key={group}>
              <th scope="row">{name(group)}</th>
              {models.map((model) => {
                const line = lines.find((one) => one.group === group && one.model === model)
                return (
                  <td key={model} className="numeric">
                    {line === undefined || line.weight === null || line.aicc === null
                      ? 'not fitted'
                      : `${percentWords(100 * line.weight)}, ${writeFixed(line.aicc, 1)}`}
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
      {failed.length === 0 ? null : (
        <p className="prose quiet">Not fitted: {failed.map((one) => failureWords[one]).join('; ')}.</p>
      )}
    </section>
  )
}

/** Spread between boards and within them at each age, and by how much a mean moves when the boards are taken into account. */
export function BoardsTable({ boards, name }: { boards: readonly BoardsAtAge[]; name(group: string): string }) {
  const { strength } = useQuantities()
  if (boards.length === 0) return null
  return (
    <section className="findings-table">
      <table className="data-table">
        <caption>Boards as a random factor (restricted maximum likelihood), {strength.unit}</caption>
        <HeadRow
          words={['Age']}
          numbers={['Boards', 'SD between boards', 'SD of blocks', 'Share of the variance', 'p', 'Mean moved most']}
        />
        <tbody>
          {boards.map((one) => {
            const [most] = one.groups.toSorted(
              (a, b) => Math.abs(b.meanMPa - b.plainMPa) - Math.abs(a.meanMPa - a.plainMPa),
            )
            return (
              <tr key={one.ageMonths}>
                <th scope="row">{one.ageMonths === null ? 'not known' : atAge(one.ageMonths)}</th>
                <td className="numeric">{one.boards}</td>
                <td className="numeric">{strength.number(one.boardSdMPa)}</td>
                <td className="numeric">{strength.number(one.blockSdMPa)}</td>
                <td className="numeric">{percentWords(100 * one.boardShare)}</td>
                <td className="numeric">{chance(one.p)}</td>
                <td className="numeric">
                  {most === undefined
                    ? '–'
                    : `${name(most.group)}: ${strength.number(most.plainMPa)} to ${strength.number(most.meanMPa)}`}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}
