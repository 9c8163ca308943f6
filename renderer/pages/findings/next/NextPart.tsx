import type { NextAnswer, SuspiciousResult } from '#contract/findings/next.ts'
import { namesOf } from '#words/findings/groupNames.ts'
import {
  dueSentence,
  nextSentences,
  nothingDueWords,
  nothingOnShelfWords,
  onShelfSentences,
  suspiciousGroups,
  suspiciousSentence,
  undecidedSentences,
} from '#words/findings/nextWords.ts'
import { demoFillingWords } from '#words/keeping/demoWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { Blocks } from '../Blocks.tsx'
import { FindingsProgress } from '../FindingsProgress.tsx'
import { nextQuestionOf } from '../findingsQuestions.ts'
import { KeepFinding } from '../kept/KeepFinding.tsx'
import type { FindingsView } from '../view.ts'
import { ShelfTable, UndecidedTable } from './NextTables.tsx'
import './next.css'

/** What to do next: what is due, what the shelf can still show, which groups need blocks, and which results are suspicious. */
export function NextPart(view: Omit<FindingsView, 'ageMonths' | 'name'>) {
  const { length } = useQuantities()
  const question = nextQuestionOf(view.settings)
  const next = useAnswer('findings.next', question)
  const filling = useAnswer('pulls.list', { studyId: null }).value?.filling ?? false
  return (
    <>
      <Notice trouble={next.error} />
      {next.pending ? <FindingsProgress /> : null}
      {filling ? <p className="running-words">{demoFillingWords}</p> : null}
      {next.value === null || filling ? null : (
        <ToDo
          next={next.value}
          {...question}
          name={namesOf(next.value.groups, length.text)}
          found={view.found}
          settings={view.settings}
        />
      )}
      {view.found.blocks.length === 0 ? null : (
        <Blocks {...view} name={namesOf(view.found.groups, length.text)} ageMonths="all" />
      )}
    </>
  )
}

type ToDoView = Pick<FindingsView, 'found' | 'name' | 'settings'> & {
  next: NextAnswer
  changePercentPerYear: number
  marginPercent: number
}

function ToDo({ next, changePercentPerYear, marginPercent, name, found, settings }: ToDoView) {
  const quantities = useQuantities()
  const { strength, length } = quantities
  const { due, shelf, undecided, suspicious } = next
  const shelves = onShelfSentences(next, changePercentPerYear, length)
  return (
    <section aria-label="Answer" className="findings-answer findings-next">
      <KeepFinding
        settings={settings}
        said={nextSentences(next, { changePercentPerYear, marginPercent }, name, quantities)}
      />
      <h2>Now</h2>
      <ul>
        {due.map((pull) => (
          <li key={pull.key}>
            {dueSentence(pull)} <a href={hashOf({ page: 'due', studyId: pull.studyId })}>Due</a>
          </li>
        ))}
        {due.length === 0 ? <li>{nothingDueWords}</li> : null}
        {suspiciousGroups(suspicious).map((results) => (
          <li key={`${results[0]!.group} ${results[0]!.ageMonths}`}>
            {suspiciousSentence(results, name, strength)}
            {results.map((one) => (
              <FarResult key={`${one.specimenId} ${one.breakId}`} one={one} />
            ))}
          </li>
        ))}
      </ul>
      <h2>With what is on the shelf</h2>
      {shelves.length === 0 ? <p>{nothingOnShelfWords}</p> : null}
      {shelves.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <ShelfTable shelf={shelf} />
      <h2>To tell groups from the reference</h2>
      {undecidedSentences(undecided, next, marginPercent, name).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <UndecidedTable undecided={undecided} found={found} name={name} />
    </section>
  )
}

/** A result that lies far out, with the way to its specimen and its curve. */
function FarResult({ one }: { one: SuspiciousResult }) {
  const { strength } = useQuantities()
  return (
    <span className="findings-far">
      <a href={hashOf({ page: 'specimen', specimenId: one.specimenId })}>{one.number}</a>{' '}
      {strength.text(one.strengthMPa)}
      {one.breakId === null ? null : (
        <>
          , <a href={hashOf({ page: 'break', breakId: one.breakId })}>curve</a>
        </>
      )}
    </span>
  )
}
