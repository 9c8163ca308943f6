import { dueLine } from '#words/programme/pullWords.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { hashOf } from '../../routes/route.ts'

/** What is due, in one line that leads there; nothing where nothing is due within a month. */
export function DueLine() {
  const line = dueLine(useAnswer('pulls.list', { studyId: null }).value?.pulls ?? [])
  if (line === null) return null
  return (
    <p className="running-words">
      <a href={hashOf({ page: 'due' })}>{line}</a>
    </p>
  )
}
