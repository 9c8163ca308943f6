import { dueLine } from '#words/programme/pullWords.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { hashOf } from '../../routes/route.ts'

/** What is due, of one study or of all, in one line that leads there; nothing where nothing is due within a month. */
export function DueLine({ studyId = null }: { studyId?: number | null }) {
  const line = dueLine(useAnswer('pulls.list', { studyId }).value?.pulls ?? [])
  if (line === null) return null
  return (
    <p className="running-words">
      <a href={hashOf(studyId === null ? { page: 'due' } : { page: 'due', studyId })}>{line}</a>
    </p>
  )
}
