import { demoFillingWords } from '#words/keeping/demoWords.ts'
import { dueLine } from '#words/programme/pullWords.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { hashOf } from '../../routes/route.ts'

/** What is due, of one study or of all, in one line that leads there; nothing where nothing is due within a month. While the demo is being filled, that. */
export function DueLine({ studyId = null }: { studyId?: number | null }) {
  const listed = useAnswer('pulls.list', { studyId }).value
  if (listed?.filling) return <p className="running-words">{demoFillingWords}</p>
  const line = dueLine(listed?.pulls ?? [])
  if (line === null) return null
  return (
    <p className="running-words">
      <a href={hashOf(studyId === null ? { page: 'due' } : { page: 'due', studyId })}>{line}</a>
    </p>
  )
}
