import { useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { SetAsideCause } from '#contract/breaks/decision.ts'
import { setAsideCauseWords } from '#words/breaks/decisionWords.ts'
import { useAction } from '../../host/useAction.ts'
import { Choice } from '../../widgets/Choice.tsx'
import { SignatureDialog } from './SignatureDialog.tsx'

type Props = { summary: Pick<BreakSummary, 'breakId' | 'number'>; onClose(): void }

const causes = (['specimen-slipped', 'wrong-block', 'fixture-touched', 'other'] as const).map((value) => ({
  value,
  label: setAsideCauseWords[value],
}))

function subjectOf({ number, breakId }: Props['summary']): string {
  return number ?? `break ${breakId}`
}

/** Rejects a break: it stays with its curve and counts in no result. */
export function SetAsideDialog({ summary, onClose }: Props) {
  const setAside = useAction('breaks.setAside')
  const [cause, setCause] = useState<SetAsideCause | null>(null)
  const [asked, setAsked] = useState(false)
  return (
    <SignatureDialog
      title={`Set aside: ${subjectOf(summary)}`}
      explains="It stays in the archive with its curve, but is not used in results. You can let it count again at any time."
      button="Set aside"
      common={['seen on the curve', 'loaded too fast', 'glue-up fault']}
      pending={setAside.pending}
      error={setAside.error}
      onSign={async (signature) => {
        setAsked(true)
        if (signature === null || cause === null) return false
        return (await setAside.run({ breakId: summary.breakId, cause, ...signature })) !== null
      }}
      onClose={onClose}
    >
      <Choice<SetAsideCause>
        label="What happened"
        options={causes}
        value={cause}
        onChange={setCause}
        focusFirst
        error={asked && cause === null ? 'Choose what happened; “other” if it is none of these.' : null}
      />
    </SignatureDialog>
  )
}

/** Lets a break that was set aside count again. */
export function TakeBackDialog({ summary, onClose }: Props) {
  const takeBack = useAction('breaks.takeBack')
  return (
    <SignatureDialog
      title={`Count again: ${subjectOf(summary)}`}
      explains="It counts in results again. The earlier decision stays in its history."
      button="Count again"
      common={['set aside by mistake', 'checked the curve']}
      pending={takeBack.pending}
      error={takeBack.error}
      onSign={async (signature) =>
        signature !== null && (await takeBack.run({ breakId: summary.breakId, ...signature })) !== null
      }
      onClose={onClose}
    />
  )
}
