import { tornWoodWords } from '#words/findings/stripWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { hashOf } from '../../routes/route.ts'
import type { FindingsView } from './view.ts'

/** The blocks behind the numbers, group by group, each with the way to its specimen and its curve. */
export function Blocks({ found, ageMonths, name }: FindingsView) {
  const { strength } = useQuantities()
  return (
    <section className="findings-blocks" aria-label="Blocks behind the numbers">
      <h2>Blocks behind the numbers</h2>
      {found.groups.map(({ key }) => {
        const blocks = found.blocks.filter((one) => one.group === key && one.ageMonths === ageMonths)
        return blocks.length === 0 ? null : (
          <details key={key}>
            <summary>
              {name(key)}: {countOf(blocks.length, 'block')}
            </summary>
            <ul>
              {blocks.map(
                ({ specimenId, breakId, number, strengthMPa, woodFailurePercent, excludedBecause, simulated }) => (
                  <li key={`${specimenId} ${breakId}`}>
                    <a href={hashOf({ page: 'specimen', specimenId })}>{number}</a>
                    {breakId === null ? null : <a href={hashOf({ page: 'break', breakId })}>curve</a>}
                    <span>
                      {strength.text(strengthMPa)}, {tornWoodWords(woodFailurePercent)}
                      {excludedBecause === null ? '' : `, left out: ${excludedBecause}`}
                      {simulated ? `, ${simulatedMark}` : ''}
                    </span>
                  </li>
                ),
              )}
            </ul>
          </details>
        )
      })}
    </section>
  )
}
