import type { ShelfSeries, UndecidedGroup } from '#contract/findings/next.ts'
import { atAge } from '#words/findings/ageingFigureWords.ts'
import { spreadFromWords, yearlyWords } from '#words/findings/nextWords.ts'
import { seriesWords } from '#words/programme/pullWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { percentWords } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'
import { HeadRow } from '../../../widgets/tables/HeadRow.tsx'
import { ToBlocks } from '../ToBlocks.tsx'
import type { FindingsView } from '../view.ts'

/** The shelf of each series, and what it can still show. */
export function ShelfTable({ shelf }: { shelf: readonly ShelfSeries[] }) {
  const { length } = useQuantities()
  if (shelf.length === 0) return null
  return (
    <div className="findings-table">
      <table className="data-table">
        <caption>Smallest change a year that a straight line through all blocks of a series tells from none</caption>
        <HeadRow
          words={['Series', 'Study, glued on']}
          numbers={['Waiting', 'Besides', 'Spread', 'After the next pull', 'After the last', 'Change seen', 'Move']}
        />
        <tbody>
          {shelf.map((one) => (
            <tr key={`${one.studyId} ${one.gluedOn} ${seriesWords(one, length)}`}>
              <th scope="row">{seriesWords(one, length)}</th>
              <td>
                <a href={hashOf({ page: 'study', studyId: one.studyId })}>{one.studyTitle}</a>,{' '}
                {calendarDayWords(one.gluedOn)}
              </td>
              <td className="numeric">
                <a href={hashOf({ page: 'due', studyId: one.studyId })}>{one.waiting}</a>
              </td>
              <td className="numeric">{one.free}</td>
              <td className="numeric">
                {one.cvPercent === null || one.cvFrom === null
                  ? '–'
                  : `${percentWords(one.cvPercent)} (${spreadFromWords[one.cvFrom]})`}
              </td>
              <td className="numeric">
                <Sight of={one.sights[0]} />
              </td>
              <td className="numeric">
                <Sight of={one.sights.at(-1)} />
              </td>
              <td className="numeric">
                {one.seen === null ? 'never' : one.seen.isDone ? 'already' : calendarDayWords(one.seen.day)}
              </td>
              <td className="numeric">
                {one.move === null
                  ? '–'
                  : `${one.move.blocks} from ${atAge(one.move.fromMonths)} to ${atAge(one.move.toMonths)}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="prose quiet">
        Waiting: blocks on the shelf for pulls to come. Besides: spares and blocks of missed or skipped pulls. A move
        leaves three blocks at the earlier pull.
      </p>
    </div>
  )
}

function Sight({ of: sight }: { of: ShelfSeries['sights'][number] | undefined }) {
  if (sight === undefined) return '–'
  return `${yearlyWords(sight.changePercentPerYear)} (${atAge(sight.ageMonths)})`
}

/** Groups that lack blocks to be told from the reference. */
export function UndecidedTable({
  undecided,
  found,
  name,
}: Pick<FindingsView, 'found' | 'name'> & { undecided: readonly UndecidedGroup[] }) {
  // The reference may be another adhesive than the one that was chosen
  const isShown = (key: string) => found.groups.some((group) => group.key === key)
  if (undecided.length === 0) return null
  return (
    <div className="findings-table">
      <table className="data-table">
        <caption>
          Groups neither told from the reference nor shown to be alike, with fewer blocks than that takes
        </caption>
        <HeadRow
          words={['Group', 'Age', 'Reference']}
          numbers={['Blocks', 'of the reference', 'Spread', 'Needed of each']}
        />
        <tbody>
          {undecided.map((one) => (
            <tr key={`${one.group} ${one.reference} ${one.ageMonths}`}>
              <th scope="row">
                <ToBlocks group={one.group} ageMonths={one.ageMonths}>
                  {name(one.group)}
                </ToBlocks>
              </th>
              <td>{one.ageMonths === null ? 'not known' : atAge(one.ageMonths)}</td>
              <td>
                {isShown(one.reference) ? (
                  <ToBlocks group={one.reference} ageMonths={one.ageMonths}>
                    {name(one.reference)}
                  </ToBlocks>
                ) : (
                  name(one.reference)
                )}
              </td>
              <td className="numeric">{one.n}</td>
              <td className="numeric">{one.referenceN}</td>
              <td className="numeric">{percentWords(one.cvPercent)}</td>
              <td className="numeric">{one.needed}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
