import { useState } from 'react'
import type { Study } from '#contract/programme/study.ts'
import type { Progress, TaskName } from '#contract/tasks.ts'
import { countOf, ofWords } from '#words/units/counts.ts'
import { useAction } from '../../../../host/useAction.ts'
import { useEvent } from '../../../../host/useEvent.ts'
import { SignatureDialog } from '../../../../parts/decisions/SignatureDialog.tsx'

const task: TaskName = 'allocation'

/** Gives the blocks their numbers, boards and order, once and for all. */
export function AllocateDialog({ study, need, onClose }: { study: Study; need: number; onClose(): void }) {
  const { studyId, fields } = study
  const allocate = useAction('studies.allocate')
  const cancel = useAction('task.cancel')
  const [progress, setProgress] = useState<Progress | null>(null)
  useEvent('task.progress', (next) => next.task === task && setProgress(next))
  const boards =
    fields.boards.length === 0
      ? 'No boards are named, so that no block belongs to one.'
      : 'Every adhesive is spread over the boards.'
  return (
    <SignatureDialog
      title={`Allocate ${countOf(need, 'block')}`}
      explains={`Each block gets a short number, and its place in the random order in which its pull is broken. ${boards} This stays; the study can be extended later.`}
      button="Allocate"
      who="optional"
      why={null}
      pending={allocate.pending}
      error={allocate.error}
      onSign={async (signature) => {
        if (signature === null) return false
        return (await allocate.run({ studyId, by: signature.by })) !== null
      }}
      onClose={onClose}
    >
      {allocate.pending && progress !== null ? (
        <p className="allocate-progress">
          <progress aria-label="Blocks allocated" max={progress.total} value={progress.done} />
          <span>{ofWords(progress.done, progress.total)}</span>
          <button type="button" className="button" onClick={() => void cancel.run({ task })}>
            Stop
          </button>
        </p>
      ) : null}
    </SignatureDialog>
  )
}
