import { agesOf } from '#domain/findings/askedBlocks.ts'
import { ageInWords } from '#words/breaks/groupName.ts'
import { tornWoodWords } from '#words/findings/stripWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { hashOf } from '../../routes/route.ts'
import { blocksPlace } from './blocksPlace.ts'
import type { FindingsView } from './view.ts'

type BlocksView = Omit<FindingsView, 'ageMonths'> & { ageMonths: FindingsView['ageMonths'] | 'all' }

/** The blocks behind the numbers, group by group, each with the way to its specimen and its curve: of one age or of all. */
export function Blocks({ found, ageMonths: asked, name }: BlocksView) {
  const { strength } = useQuantities()
  const ages = asked === 'all' ? agesOf(found.blocks) : [asked]
  const parts = found.groups.flatMap(({ key }) =>
    ages.map((ageMonths) => ({
      ...{ key, ageMonths },
      blocks: found.blocks.filter((one) => one.group === key && one.ageMonths === ageMonths),
    })),
  )
  return (
    <section className="findings-blocks" aria-label="Blocks behind the numbers">
      <h2>Blocks behind the numbers</h2>
      {parts.map(({ key, ageMonths, blocks }) => {
        return blocks.length === 0 ? null : (
          <details key={`${key} ${ageMonths}`} id={blocksPlace(key, ageMonths)}>
            <summary>
              {name(key)}
              {asked === 'all' ? `, ${ageInWords(ageMonths)}` : ''}: {countOf(blocks.length, 'block')}
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
