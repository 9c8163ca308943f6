import type { Study } from '#contract/programme/study.ts'
import { useAction } from '../../../../host/useAction.ts'
import { useAnswer } from '../../../../host/useAnswer.ts'
import { SignatureFields } from '../../../../parts/decisions/SignatureFields.tsx'
import { useSignature } from '../../../../parts/decisions/signature.ts'
import { go } from '../../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../../routes/route.ts'
import { Notice } from '../../../../widgets/Notice.tsx'
import { StudyForm } from './StudyForm.tsx'
import { textsOfStudy } from './studyForm.ts'

/** Lays a newer version of a study over the others: corrected before blocks are allocated, extended after. */
export function EditStudyPage({ studyId }: { studyId: number }) {
  const { value, error } = useAnswer('studies.get', { studyId })
  return (
    <div className="study-page">
      <p className="crumb">
        <a href={hashOf({ page: 'studies' })}>Studies</a>
        <a href={hashOf({ page: 'study', studyId })}>{value?.current.fields.title ?? `Study ${studyId}`}</a>
      </p>
      <h1>Change the plan</h1>
      <Notice trouble={value === null ? error : null} />
      {value === null ? null : <EditForm study={value.current} isAllocated={value.counts.allocated > 0} />}
    </div>
  )
}

const asked = { who: 'required', why: 'required' } as const

function EditForm({ study, isAllocated }: { study: Study; isAllocated: boolean }) {
  const { studyId, fields } = study
  const correct = useAction('studies.correct')
  const draft = useSignature(asked)
  return (
    <>
      {isAllocated ? (
        <p className="prose">
          Blocks of this study are allocated and keep their numbers, boards and order. Levels, ages, blocks and boards
          can be added; what is new is allocated afterwards.
        </p>
      ) : null}
      <StudyForm
        begins={textsOfStudy(fields)}
        kept={{ seed: fields.seed, demo: fields.demo }}
        trouble={correct.error}
        onDismiss={correct.dismiss}
        onFields={async (next) => {
          draft.ask()
          if (next === null || draft.signature === null) return false
          const kept = await correct.run({ studyId, fields: next, ...draft.signature })
          if (kept !== null) go({ page: 'study', studyId })
          return kept !== null
        }}
      >
        <SignatureFields
          draft={draft}
          asked={asked}
          words={{ whyLabel: 'What changes, and why', whyMissing: 'Say what changes; the version before is kept too.' }}
          beside
        />
        <div className="form-buttons">
          <button type="submit" className="button button-primary" aria-disabled={correct.pending}>
            Keep the new version
          </button>
          <a className="button button-quiet" href={hashOf({ page: 'study', studyId })}>
            Cancel
          </a>
        </div>
      </StudyForm>
    </>
  )
}
