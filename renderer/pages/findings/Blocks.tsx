import type { FindingsBlock } from '#contract/findings/procedures.ts'
import { agesOf } from '#domain/findings/askedBlocks.ts'
import { ageInWords } from '#words/breaks/groupName.ts'
import { tornWoodWords } from '#words/findings/stripWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { hashOf } from '../../routes/route.ts'
import { Disclosure } from '../../widgets/Disclosure.tsx'
import { blocksPlace } from './blocksPlace.ts'
import type { FindingsView } from './view.ts'

type BlocksView = Omit<FindingsView, 'ageMonths'> & { ageMonths: FindingsView['ageMonths'] | 'all' }

/** The blocks behind the numbers, group by group, each with the way to its specimen and its curve: of one age or of all. */
export function Blocks({ found, ageMonths: asked, name }: BlocksView) {
  const ages = asked === 'all' ? agesOf(found.blocks) : [asked]
  const byGroup = Map.groupBy(found.blocks, ({ group }) => group)
  const parts = found.groups.flatMap(({ key }) =>
    ages.map((ageMonths) => ({
      ...{ key, ageMonths },
      blocks: (byGroup.get(key) ?? []).filter((one) => one.ageMonths === ageMonths),
    })),
  )
  return (
    <section className="findings-blocks" aria-label="Blocks behind the numbers">
      <h2>Blocks behind the numbers</h2>
      {parts.map(({ key, ageMonths, blocks }) => {
        const age = asked === 'all' ? `, ${ageInWords(ageMonths)}` : ''
        return blocks.length === 0 ? null : (
          <Disclosure
            key={`${key} ${ageMonths}`}
            id={blocksPlace(key, ageMonths)}
            summary={`${name(key)}${age}: ${countOf(blocks.length, 'block')}`}
          >
            <BlockList blocks={blocks} />
          </Disclosure>
        )
      })}
    </section>
  )
}

function BlockList({ blocks }: { blocks: readonly FindingsBlock[] }) {
  const { strength } = useQuantities()
  return (
    <ul>
      {blocks.map(({ specimenId, breakId, number, strengthMPa, woodFailurePercent, excludedBecause, simulated }) => (
        <li key={`${specimenId} ${breakId}`}>
          <a href={hashOf({ page: 'specimen', specimenId })}>{number}</a>
          {breakId === null ? null : <a href={hashOf({ page: 'break', breakId })}>curve</a>}
          <span>
            {strength.text(strengthMPa)}, {tornWoodWords(woodFailurePercent)}
            {excludedBecause === null ? '' : `, left out: ${excludedBecause}`}
            {simulated ? `, ${simulatedMark}` : ''}
          </span>
        </li>
      ))}
    </ul>
  )
}
