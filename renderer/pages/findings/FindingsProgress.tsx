import { ofWords } from '#words/units/counts.ts'
import { TaskProgress } from '../../parts/TaskProgress.tsx'

/** How far the working out is, and a way to stop it. */
export function FindingsProgress() {
  return (
    <TaskProgress
      task="findings"
      label="Parts of the answer worked out"
      words={(progress) => `Working out ${progress === null ? '' : ofWords(progress.done, progress.total)}`}
    />
  )
}
