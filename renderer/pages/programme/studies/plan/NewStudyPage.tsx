import { useState } from 'react'
import { useAction } from '../../../../host/useAction.ts'
import { SignedBy } from '../../../../parts/decisions/SignedBy.tsx'
import { useSigner } from '../../../../parts/decisions/signer.ts'
import { go } from '../../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../../routes/route.ts'
import { StudyForm } from './StudyForm.tsx'
import { emptyStudy } from './studyForm.ts'

/** Seeds are short enough to be written down. */
const seeds = 1_000_000

/** Plans a new study. */
export function NewStudyPage() {
  const signer = useSigner()
  const add = useAction('studies.add')
  const [seed] = useState(() => crypto.getRandomValues(new Uint32Array(1))[0]! % seeds)
  return (
    <div className="study-page">
      <p className="crumb">
        <a href={hashOf({ page: 'studies' })}>Studies</a>
      </p>
      <h1>Plan a study</h1>
      <StudyForm
        begins={emptyStudy}
        kept={{ seed, demo: false }}
        trouble={add.error}
        onDismiss={add.dismiss}
        onFields={async (fields) => {
          const study = fields === null ? null : await add.run({ fields, by: signer })
          if (study !== null) go({ page: 'study', studyId: study.studyId })
          return study !== null
        }}
      >
        <div className="form-buttons">
          <button type="submit" className="button button-primary" aria-disabled={add.pending}>
            Keep the plan
          </button>
          <a className="button button-quiet" href={hashOf({ page: 'studies' })}>
            Cancel
          </a>
          <SignedBy />
        </div>
      </StudyForm>
    </div>
  )
}
