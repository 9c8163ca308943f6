import { doneWords } from '#words/specimens/manyWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { TaskProgress } from '../../../parts/decisions/TaskProgress.tsx'

/** Withdraws specimens that are lost or spoiled, or takes them back. `onClose` is told in words what was done, null: nothing. */
export function WithdrawDialog({
  specimenIds,
  kind,
  onClose,
}: {
  specimenIds: readonly number[]
  kind: 'withdrawn' | 'taken-back'
  onClose(done: string | null): void
}) {
  const withdraw = useAction('specimens.withdraw')
  const many = countOf(specimenIds.length, 'specimen')
  const isOne = specimenIds.length === 1
  const words =
    kind === 'withdrawn'
      ? {
          title: `Withdraw ${many}`,
          explains: isOne
            ? 'It waits for the press no more and counts as lost in its study. You can take it back.'
            : 'They wait for the press no more and count as lost in their study. You can take them back.',
          button: 'Withdraw',
          whyLabel: isOne ? 'What became of it' : 'What became of them',
        }
      : {
          title: `Take ${many} back`,
          explains: isOne ? 'It waits for the press again.' : 'Those that were withdrawn wait for the press again.',
          button: 'Take back',
          whyLabel: isOne ? 'Why it comes back' : 'Why they come back',
        }
  return (
    <SignatureDialog
      {...words}
      pending={withdraw.pending}
      error={withdraw.error}
      onSign={async (signature) => {
        if (signature === null) return false
        const changed = await withdraw.run({ specimenIds: [...specimenIds], kind, ...signature })
        if (changed === null) return false
        onClose(doneWords(kind, changed, specimenIds.length))
        return true
      }}
      onClose={() => onClose(null)}
    >
      {withdraw.pending ? <TaskProgress task="specimens" label="Specimens changed" /> : null}
    </SignatureDialog>
  )
}
