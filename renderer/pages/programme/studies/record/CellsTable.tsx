import type { Series, StudyFields } from '#contract/programme/study.ts'
import type { CellCounts } from '#contract/programme/studyRecord.ts'
import { cellKey, cellsOf, seriesKey, seriesOf } from '#domain/programme/study/cells.ts'
import { ageWords, cellParts, seriesWords } from '#words/programme/study/studyWords.ts'
import { writeCount } from '#words/units/numbers.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'

/** Every series with its ages: how many blocks each cell has, and what became of them. */
export function CellsTable({ fields, cells }: { fields: StudyFields; cells: readonly CellCounts[] }) {
  const quantities = useQuantities()
  const counts = new Map(cells.map((cell) => [cellKey(cell), cell]))
  const planned = new Set(cellsOf(fields).map(cellKey))
  const series = seriesOf(fields)
  const ages = [...fields.agesMonths, ...(fields.sparesPerSeries > 0 ? [null] : [])]
  const parts = (one: Series, ageMonths: number | null): string[] => {
    const key = cellKey({ ...one, ageMonths })
    const cell = counts.get(key)
    if (cell !== undefined) return cellParts(cell)
    if (ageMonths === null) return [`${writeCount(fields.sparesPerSeries)} planned`]
    return [planned.has(key) ? `${writeCount(fields.blocksPerCell)} planned` : '–']
  }
  return (
    <section className="study-cells" aria-labelledby="cells-title">
      <h2 id="cells-title">Groups and their blocks</h2>
      <div className="study-cells-scroll">
        <table className="data-table">
          <thead>
            <tr>
              <th scope="col">Adhesive</th>
              <th scope="col">Made and kept as</th>
              {ages.map((age) => (
                <th scope="col" key={age ?? 'spares'}>
                  {ageWords(age)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {series.map((one, index) => (
              <tr key={seriesKey(one)}>
                <th scope="row">
                  {one.adhesive === series[index - 1]?.adhesive ? <Again name={one.adhesive} /> : one.adhesive}
                </th>
                <td className="study-series">{seriesWords(one, quantities)}</td>
                {ages.map((age) => (
                  <td key={age ?? 'spares'}>
                    {parts(one, age).map((part) => (
                      <span key={part}>{part}</span>
                    ))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )
}

/** The name of the row above, for those who do not see that. */
function Again({ name }: { name: string }) {
  return <span className="visually-hidden">{name}</span>
}
