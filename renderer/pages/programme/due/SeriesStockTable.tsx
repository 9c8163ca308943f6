import type { SeriesStock } from '#contract/programme/pullProcedures.ts'
import { seriesWords } from '#words/programme/breakingWords.ts'
import { shortageWords, stockSummary } from '#words/programme/pullWords.ts'
import { ageInMonthsWords, calendarDayWords } from '#words/units/calendarDays.ts'
import { percentWords } from '#words/units/numbers.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Notice } from '../../../widgets/Notice.tsx'

/** What is left on the shelf for the ages that are still open, and what lost blocks and missed pulls mean for them. */
export function SeriesStockTable({ studyId }: { studyId: number }) {
  const stock = useAnswer('pulls.stock', { studyId })
  const { length } = useQuantities()
  const series = stock.value ?? []
  const short = series.flatMap((one) =>
    one.ages.filter(({ planned, atHand }) => atHand < planned).map((age) => ({ one, age })),
  )
  return (
    <section className="due-group screen-only" aria-label="On the shelf">
      <h2>On the shelf</h2>
      <Notice trouble={stock.error} />
      {stock.value === null ? null : <p>{stockSummary(series)}</p>}
      {short.length === 0 ? null : (
        <table className="data-table">
          <thead>
            <tr>
              <th scope="col">Series</th>
              <th scope="col">Glued on</th>
              <th scope="col">Age</th>
              <th scope="col">Blocks</th>
              <th scope="col">Smallest difference found</th>
            </tr>
          </thead>
          <tbody>
            {short.map(({ one, age }) => (
              <tr key={`${seriesWords(one, length)} ${one.gluedOn} ${age.ageMonths}`}>
                <th scope="row">{seriesWords(one, length)}</th>
                <td className="when">{calendarDayWords(one.gluedOn)}</td>
                <td>{ageInMonthsWords(age.ageMonths)}</td>
                <td>{shortageWords(age)}</td>
                <td>
                  <Detectable age={age} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}

function Detectable({ age }: { age: SeriesStock['ages'][number] }) {
  const { detectablePercent: now, detectableAsPlannedPercent: planned } = age
  if (planned === null) return <span className="quiet">the study names no spread</span>
  if (now === null) return <>none; planned {percentWords(planned)}</>
  return (
    <>
      {percentWords(now)}
      {now === planned ? null : <span className="quiet">, planned {percentWords(planned)}</span>}
    </>
  )
}
