import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { type Standing, standingOf, standingWords } from '#words/reevaluation/standing.ts'
import './standingTag.css'

const paths: Record<Standing, string> = {
  running: 'M10 3a7 7 0 1 1-7 7M10 3v7l4 3',
  waiting: 'M10 2.5 17.5 10 10 17.5 2.5 10Z',
  nothing: 'M6 10a4 4 0 1 1 8 0a4 4 0 1 1-8 0Z',
  adopted: 'M3 10.5 8 15.5 17 5',
  dropped: 'M4 10h12',
  'taken-out': 'M7 5 3 9l4 4M3 9h9a4 4 0 0 1 0 8h-2',
  cancelled: 'M4 4 16 16M16 4 4 16',
  'cut-short': 'M4 4v12M9 10h7M9 10l3-3M9 10l3 3',
}

/** How a re-evaluation stands, as a shape and in words. */
export function StandingTag({
  summary,
}: {
  summary: Pick<ReevaluationSummary, 'end' | 'decisions' | 'evaluated' | 'breaks'>
}) {
  const standing = standingOf(summary)
  return (
    <span className="standing-tag" data-standing={standing}>
      <svg className="standing-tag-shape" viewBox="0 0 20 20" aria-hidden="true">
        <path d={paths[standing]} />
      </svg>
      {standingWords(summary)}
    </span>
  )
}
