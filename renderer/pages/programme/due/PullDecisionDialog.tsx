import { useState } from 'react'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { pullDecisionMeaning, pullTitle } from '#words/programme/pullWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { Field } from '../../../widgets/Field.tsx'

export type PullWord = 'moved' | 'skipped' | 'restored'

const titles: Record<PullWord, string> = { moved: 'Move', skipped: 'Skip', restored: 'Restore' }

/** A signed word on a pull: moved to another day, skipped, or as it was planned again. */
export function PullDecisionDialog({ pull, kind, onClose }: { pull: PullSummary; kind: PullWord; onClose(): void }) {
  const decide = useAction('pulls.decide')
  const [dueOn, setDueOn] = useState(pull.dueOn)
  const [asked, setAsked] = useState(false)
  const missing = kind === 'moved' && (dueOn === '' || dueOn === pull.dueOn)
  return (
    <SignatureDialog
      title={`${titles[kind]}: ${pullTitle(pull)}`}
      explains={`${pullDecisionMeaning[kind]} It is due on ${calendarDayWords(pull.dueOn)}.`}
      button={titles[kind]}
      common={kind === 'restored' ? [] : ['nobody is here', 'press out of order', 'too few blocks left']}
      pending={decide.pending}
      error={decide.error}
      onSign={async (signature) => {
        setAsked(true)
        if (signature === null || missing) return false
        const { studyId, gluedOn, ageMonths } = pull
        const about = { studyId, gluedOn, ageMonths, blocksPerSeries: null }
        return (await decide.run({ ...about, kind, dueOn: kind === 'moved' ? dueOn : null, ...signature })) !== null
      }}
      onClose={onClose}
    >
      {kind === 'moved' ? (
        <Field
          label="New day"
          type="date"
          required
          data-first-focus=""
          value={dueOn}
          onChange={(event) => setDueOn(event.currentTarget.value)}
          error={asked && missing ? 'Choose another day.' : null}
        />
      ) : null}
    </SignatureDialog>
  )
}
