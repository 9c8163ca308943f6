import type { OverruledPeak } from '#contract/breaks/decision.ts'
import { overruledWords } from '#words/breaks/decisionWords.ts'
import './overruledMark.css'

/** Marks a peak that a person's word put in place of the one found; says whose and why when it is pointed at or read out. */
export function OverruledMark({ overruled }: { overruled: OverruledPeak | null }) {
  if (overruled === null) return null
  const words = overruledWords(overruled)
  return (
    <span className="overruled-mark" title={words}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d="M8 1.5 14.5 8 8 14.5 1.5 8Z" />
        <path d="M5 8h6M8 5v6" />
      </svg>
      <span className="visually-hidden">{words}</span>
    </span>
  )
}
