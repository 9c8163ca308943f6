import type { SessionGroup } from '#domain/programme/breaking/sessionReport.ts'
import { groupWords } from '#words/programme/breakingWords.ts'
import { percentWords } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

const columns = ['Broken', 'Counted', 'Mean', 'SD', 'CV', 'Lowest', 'Highest', 'Wood failure']

/** What each group gave so far, as observed. */
export function SessionGroups({ groups }: { groups: readonly SessionGroup[] }) {
  const { strength, length } = useQuantities()
  const percent = (value: number | null) => (value === null ? '–' : percentWords(value))
  return (
    <section aria-labelledby="groups-title">
      <h2 id="groups-title">Groups as they stand, in {strength.unit}</h2>
      <table className="data-table">
        <thead>
          <tr>
            <th scope="col">Group</th>
            {columns.map((name) => (
              <th key={name} scope="col" className="numeric">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {groups.map((group) => (
            <tr key={groupWords(group, length)}>
              <th scope="row" className="wordy">
                {groupWords(group, length)}
              </th>
              <td className="numeric">
                {group.broken} of {group.blocks}
              </td>
              <td className="numeric">{group.summary.n}</td>
              <td className="numeric">{strength.number(group.summary.meanMPa)}</td>
              <td className="numeric">{strength.number(group.summary.sdMPa)}</td>
              <td className="numeric">{percent(group.summary.cvPercent)}</td>
              <td className="numeric">{strength.number(group.summary.minMPa)}</td>
              <td className="numeric">{strength.number(group.summary.maxMPa)}</td>
              <td className="numeric">{percent(group.summary.woodFailureMeanPercent)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
