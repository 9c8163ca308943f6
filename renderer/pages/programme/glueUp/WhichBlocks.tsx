import type { BlockToGlue } from '#contract/programme/glueUpProcedures.ts'
import { agesToGlue, seriesToGlue } from '#domain/programme/glueUp/chosenBlocks.ts'
import { seriesWords } from '#words/programme/breakingWords.ts'
import { ageInMonthsWords } from '#words/units/calendarDays.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** Which series of a study are glued now, how many blocks of each, and of which ages. */
export function WhichBlocks({
  blocks,
  series,
  ages,
  onSeries,
  onAges,
}: {
  blocks: readonly BlockToGlue[]
  /** How many of each, as typed; '': all. */
  series: ReadonlyMap<string, string>
  ages: ReadonlySet<number | null>
  onSeries(series: ReadonlyMap<string, string>): void
  onAges(ages: ReadonlySet<number | null>): void
}) {
  const { length } = useQuantities()
  const all = seriesToGlue(blocks)
  const allAges = agesToGlue(blocks)
  function tick(key: string, isChosen: boolean): void {
    const next = new Map(series)
    if (isChosen) next.set(key, '')
    else next.delete(key)
    onSeries(next)
  }
  function tickAge(age: number | null, isChosen: boolean): void {
    const next = new Set(ages)
    if (isChosen) next.add(age)
    else next.delete(age)
    onAges(next)
  }
  return (
    <>
      <table className="data-table glue-series" aria-label="Groups to glue">
        <thead>
          <tr>
            <th scope="col">
              <label>
                <input
                  type="checkbox"
                  checked={all.every(({ key }) => series.has(key))}
                  onChange={(event) =>
                    onSeries(new Map(event.currentTarget.checked ? all.map(({ key }) => [key, '']) : []))
                  }
                />{' '}
                All groups
              </label>
            </th>
            <th scope="col" className="numeric">
              To glue
            </th>
            <th scope="col">How many now</th>
          </tr>
        </thead>
        <tbody>
          {all.map((one) => (
            <tr key={one.key}>
              <td>
                <label>
                  <input
                    type="checkbox"
                    checked={series.has(one.key)}
                    onChange={(event) => tick(one.key, event.currentTarget.checked)}
                  />{' '}
                  {seriesWords(one, length)}
                </label>
              </td>
              <td className="numeric">{one.blocks.length}</td>
              <td>
                <input
                  className="glue-count"
                  aria-label={`How many of ${seriesWords(one, length)}`}
                  inputMode="numeric"
                  placeholder="all"
                  value={series.get(one.key) ?? ''}
                  onChange={(event) => onSeries(new Map(series).set(one.key, event.currentTarget.value))}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {allAges.length < 2 ? null : (
        <fieldset className="glue-ages">
          <legend>Ages</legend>
          {allAges.map((age) => (
            <label key={age}>
              <input
                type="checkbox"
                checked={ages.has(age)}
                onChange={(event) => tickAge(age, event.currentTarget.checked)}
              />{' '}
              {age === null ? 'spares' : ageInMonthsWords(age)}
            </label>
          ))}
        </fieldset>
      )}
    </>
  )
}
