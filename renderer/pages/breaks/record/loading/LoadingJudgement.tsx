import type { BreakSummary } from '#contract/breaks/break.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { type JudgedAspect, judgeLoading } from '#domain/signal/practice/judgeLoading.ts'
import { judgedFigures, judgedSentence, verdictNames } from '#words/breaks/judgementWords.ts'
import { usePreferences } from '../../../../host/hostContext.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'
import { hashOf } from '../../../../routes/route.ts'
import './judgement.css'

/** How the loading stands to the chosen test practice, its clause named. What cannot be told says so. */
export function LoadingJudgement({ summary, result }: { summary: BreakSummary; result: EvaluationResult }) {
  const { practices, practice: name } = usePreferences()
  const practice = practices.find((one) => one.name === name) ?? null
  const settings = <a href={hashOf({ page: 'settings' })}>Choose or edit test practices</a>
  if (practice === null) return <p className="empty-words">No test practice is chosen. {settings}.</p>
  const judged = judgeLoading(result, summary.areaMm2, practice)
  return (
    <div className="judgement">
      <p>
        <strong>{practice.name}</strong> <span className="quiet">{practice.source}</span>
      </p>
      {judged.length === 0 ? <p className="empty-words">This practice has no limits.</p> : null}
      <ul className="judged">
        {judged.map((line) => (
          <JudgedLine key={line.aspect} line={line} />
        ))}
      </ul>
      <p>{settings}</p>
    </div>
  )
}

function JudgedLine({ line }: { line: JudgedAspect }) {
  const { name, figures } = judgedFigures(line, useQuantities())
  return (
    <li data-verdict={line.verdict}>
      <svg viewBox="0 0 20 20" aria-hidden="true">
        {line.verdict === 'inside' ? (
          <path d="M4 10.5 8.5 15 16.5 5.5" />
        ) : line.verdict === 'outside' ? (
          <path d="M10 2 18.5 17.5H1.5ZM10 7.5v5M10 14.6v1" />
        ) : (
          <path d="M4 10H16" />
        )}
      </svg>
      <p>
        <strong>
          {name}: {verdictNames[line.verdict]}
        </strong>
        <span className="judged-figures">{figures}</span>
        <span className="judged-sentence">{judgedSentence(line)}</span>
      </p>
    </li>
  )
}
