import { useState } from 'react'
import type { BenchState } from '#contract/bench/bench.ts'
import { progressWords } from '#words/programme/breakingWords.ts'
import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { useSingleKeys } from '../../../parts/routing/singleKeys.ts'
import { hashOf } from '../../../routes/route.ts'
import { Keys } from '../../../widgets/Keys.tsx'
import './session.css'

type Breaking = NonNullable<BenchState['breaking']>

/** How far the breaking session is, with the way to its page. */
export function SessionLine({ breaking }: { breaking: Breaking }) {
  return (
    <a className="session-line" href={hashOf({ page: 'breaking', breakingSessionId: breaking.breakingSessionId })}>
      {progressWords(breaking)}
    </a>
  )
}

/** Passing over the specimen at hand; another one is taken by scanning it. */
export function SessionControls({ bench }: { bench: BenchState }) {
  const [passing, setPassing] = useState(false)
  const skip = useAction('breaking.skip')
  const { specimen, phase } = bench
  const canPass = specimen !== null && specimen.timesBroken === 0 && phase !== 'loading'
  useSingleKeys((key) => {
    if (key.toLowerCase() !== 'p' || !canPass) return false
    setPassing(true)
    return true
  })
  return (
    <div className="session-controls">
      <p className="quiet">Scan another block to take it first.</p>
      <button type="button" className="button" aria-disabled={!canPass} onClick={() => canPass && setPassing(true)}>
        Pass over <Keys keys="P" />
      </button>
      {passing && specimen !== null ? (
        <SignatureDialog
          title={`Pass over ${specimen.fields.number}`}
          explains="It goes back on the shelf, and the session says that it was passed over. Scan it to break it after all."
          button="Pass over"
          who="optional"
          why="optional"
          whyLabel="Why"
          pending={skip.pending}
          error={skip.error}
          onSign={async (signature) =>
            (await skip.run({
              ...{ specimenId: specimen.specimenId, note: signature?.reason ?? '', by: signature?.by ?? '' },
            })) !== null
          }
          onClose={() => setPassing(false)}
        />
      ) : null}
    </div>
  )
}
