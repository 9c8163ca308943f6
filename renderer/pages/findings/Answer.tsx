import type { FindingsOptions } from '#contract/findings/options.ts'
import { groupStrip } from '#figures/findings/groupStrip.ts'
import { asGoodAnswer, changedAnswer, linesOf, strongestAnswer, treatmentAnswer } from '#words/findings/answerWords.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Figure } from '../../parts/Figure.tsx'
import { filterOf, inOrder } from './findingsQuestions.ts'
import type { FindingsView } from './view.ts'

/** The answer in a sentence for each group that it is about, and every block at its strength. */
export function Answer(view: FindingsView) {
  const { found, settings, ageMonths, name } = view
  const { strength } = useQuantities()
  const summaries = linesOf(found.lines, 'group-summary', ageMonths)
  const strips = found.groups
    .map(({ key }) => ({
      name: name(key),
      meanMPa: summaries.find(({ group }) => group === key)?.meanMPa ?? null,
      blocks: found.blocks
        .filter((one) => one.group === key && one.ageMonths === ageMonths && one.excludedBecause === null)
        .map(({ number, strengthMPa, woodFailurePercent }) => ({
          name: number,
          strengthMPa,
          lowerLimit: false,
          woodFailurePercent,
        })),
    }))
    .filter(({ blocks }) => blocks.length > 0)
    .sort((one, other) => (other.meanMPa ?? -1) - (one.meanMPa ?? -1))
  return (
    <section aria-label="Answer" className="findings-answer">
      {settings.asked === 'torn-wood' ? (
        <TreatmentAnswer {...view} />
      ) : (
        sentencesOf(view).map((sentence) => <p key={sentence}>{sentence}</p>)
      )}
      <Figure draw={(size) => groupStrip(strips, strength, size)} />
    </section>
  )
}

function sentencesOf({ found, settings, ageMonths, name }: FindingsView): string[] {
  const { lines, groups } = found
  if (settings.asked === 'changed') {
    const answers = groups.flatMap(({ key }) => {
      const answer = changedAnswer(
        linesOf(lines, 'retention').filter(({ group }) => group === key),
        name,
      )
      return answer === null ? [] : [answer]
    })
    return answers.length > 0 ? answers : ['No group was broken at two ages yet.']
  }
  if (settings.asked === 'as-good') {
    const differences = linesOf(lines, 'against-reference', ageMonths)
    if (differences.length === 0)
      return ['Choose the group that the others are to be held against; it needs blocks at this age.']
    return differences.map((difference) =>
      asGoodAnswer(
        difference,
        linesOf(lines, 'equivalence', ageMonths).find(
          ({ a, b }) => a === difference.group && b === difference.reference,
        ),
        name,
      ),
    )
  }
  return [strongestAnswer(linesOf(lines, 'rank', ageMonths), name)]
}

const compared: readonly FindingsOptions['woodFailure'][] = ['observed', 'bond-only', 'adjusted', 'censored']

/** The orders of the groups under each treatment of torn wood, beside each other. */
function TreatmentAnswer({ settings, found, ageMonths, name }: FindingsView) {
  const filter = filterOf(settings)
  const answers = [
    useAnswer('findings.of', {
      options: { woodFailure: 'observed', only: ['group-summary', 'censored-fit'], distribution: 'weibull' },
      filter,
    }),
    useAnswer('findings.of', { options: { woodFailure: 'bond-only', only: ['group-summary'] }, filter }),
    useAnswer('findings.of', { options: { woodFailure: 'adjusted', only: ['group-summary'] }, filter }),
  ]
  if (answers.some(({ value }) => value === null)) return null
  const groups = found.groups.map(({ key }) => key)
  const orders = compared.map((treatment, i) => {
    const { lines } = answers[treatment === 'censored' ? 0 : i]!.value!
    const means = linesOf(lines, treatment === 'censored' ? 'censored-fit' : 'group-summary', ageMonths)
    return {
      treatment,
      groups: inOrder(groups, (group) => means.find((one) => one.group === group)?.meanMPa ?? null),
    }
  })
  return (
    <>
      <p>{treatmentAnswer(orders, name)}</p>
      <table className="data-table">
        <caption>Groups by their mean, strongest first, under each treatment of torn wood</caption>
        <thead>
          <tr>
            <th scope="col">Torn wood</th>
            <th scope="col">Order</th>
          </tr>
        </thead>
        <tbody>
          {orders.map(({ treatment, groups: order }) => (
            <tr key={treatment}>
              <th scope="row">{treatmentNames[treatment]}</th>
              <td>{order.map(name).join(' > ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}

const treatmentNames = {
  observed: 'as observed',
  'bond-only': 'bond failures only',
  adjusted: 'raised by its share, factor 1',
  censored: 'held at least that much (Weibull)',
} as const
