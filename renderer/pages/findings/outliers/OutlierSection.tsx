import type { FindingsBlock } from '#contract/findings/procedures.ts'
import { type Standing, type WithAndWithout, withAndWithout } from '#domain/findings/withAndWithout.ts'
import { otherwiseWords, pointedOutWords } from '#words/findings/outlierWords.ts'
import { treatmentWords } from '#words/findings/treatmentWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'
import { treatmentOfMeans } from '../findingsQuestions.ts'
import type { FindingsView } from '../view.ts'

const confidence = 0.95
type Row = { group: string } & WithAndWithout<FindingsBlock>

/** Blocks that lie far out and blocks that were left out, and what the results are with and without them. */
export function OutlierSection({ found, settings, ageMonths, name }: FindingsView) {
  const treatment = treatmentOfMeans(settings)
  const all: Row[] = found.groups.map(({ key }) => ({
    group: key,
    ...withAndWithout(
      found.blocks.filter((one) => one.group === key && one.ageMonths === ageMonths),
      treatment,
      confidence,
    ),
  }))
  const rows = all.filter(({ putBack, trimmed }) => putBack !== null || trimmed !== null)
  const otherwise = (words: string, of: (row: Row) => Standing | null) =>
    otherwiseWords(
      words,
      all.map((row) => ({
        ...{ group: row.group, meanMPa: row.counted.meanMPa },
        otherwiseMPa: (of(row) ?? row.counted).meanMPa,
      })),
      name,
    )
  return (
    <section className="findings-outliers" aria-label="With and without">
      <h2>With and without</h2>
      {rows.length === 0 ? (
        <p className="prose">
          No block lies far out by Grubbs' test or the generalised ESD test at 5 %, and none was left out.
        </p>
      ) : (
        <>
          {rows.some(({ putBack }) => putBack !== null) ? (
            <p className="prose">{otherwise('With the blocks left out put back', ({ putBack }) => putBack)}</p>
          ) : null}
          {rows.some(({ trimmed }) => trimmed !== null) ? (
            <p className="prose">{otherwise('Without the blocks pointed out', ({ trimmed }) => trimmed)}</p>
          ) : null}
          <StandingTable rows={rows} name={name} treatment={treatmentWords(treatment)} />
          <ul>
            {rows.flatMap(({ pointedOut, leftOut }) => [
              ...pointedOut.map(({ block, strengthMPa, tests }) => (
                <BlockLine key={keyOf(block)} block={block} strengthMPa={strengthMPa} why={pointedOutWords(tests)} />
              )),
              ...leftOut.map((block) => (
                <BlockLine
                  key={keyOf(block)}
                  block={block}
                  strengthMPa={block.strengthMPa}
                  why={`left out: ${block.excludedBecause}`}
                />
              )),
            ])}
          </ul>
        </>
      )}
    </section>
  )
}

const keyOf = ({ specimenId, breakId }: FindingsBlock) => `${specimenId} ${breakId}`

/** A block with the way to its page, where a person leaves it out or puts it back. */
function BlockLine({ block, strengthMPa, why }: { block: FindingsBlock; strengthMPa: number; why: string }) {
  const { strength } = useQuantities()
  const { specimenId, breakId, number } = block
  const page = breakId === null ? ({ page: 'specimen', specimenId } as const) : ({ page: 'break', breakId } as const)
  return (
    <li>
      <a href={hashOf(page)}>{number}</a>
      <span>
        {strength.text(strengthMPa)}, {why}
      </span>
    </li>
  )
}

function StandingTable({
  rows,
  name,
  treatment,
}: {
  rows: readonly Row[]
  name(group: string): string
  treatment: string
}) {
  const { strength } = useQuantities()
  const words = (standing: Standing | null) =>
    standing === null
      ? '–'
      : `${strength.number(standing.meanMPa)}${
          standing.lowMPa === null
            ? ''
            : ` (${strength.number(standing.lowMPa)} to ${strength.number(standing.highMPa)})`
        }, n ${standing.n}`
  return (
    <div className="findings-table">
      <table className="data-table">
        <caption>
          Means in {strength.unit} with 95 % intervals, torn wood {treatment}
        </caption>
        <thead>
          <tr>
            <th scope="col">Group</th>
            <th scope="col" className="numeric">
              As it counts
            </th>
            <th scope="col" className="numeric">
              Left out put back
            </th>
            <th scope="col" className="numeric">
              Without those pointed out
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ group, counted, putBack, trimmed }) => (
            <tr key={group}>
              <th scope="row">{name(group)}</th>
              <td className="numeric">{words(counted)}</td>
              <td className="numeric">{words(putBack)}</td>
              <td className="numeric">{words(trimmed)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
