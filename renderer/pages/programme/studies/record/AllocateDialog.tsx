import type { Study } from '#contract/programme/study.ts'
import { countOf } from '#words/units/counts.ts'
import { useAction } from '../../../../host/useAction.ts'
import { SignatureDialog } from '../../../../parts/decisions/SignatureDialog.tsx'
import { TaskProgress } from '../../../../parts/decisions/TaskProgress.tsx'

/** Gives the blocks their numbers, boards and order, once and for all. */
export function AllocateDialog({ study, need, onClose }: { study: Study; need: number; onClose(): void }) {
  const { studyId, fields } = study
  const allocate = useAction('studies.allocate')
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
      {allocate.pending ? <TaskProgress task="allocation" label="Blocks allocated" /> : null}
    </SignatureDialog>
  )
}
