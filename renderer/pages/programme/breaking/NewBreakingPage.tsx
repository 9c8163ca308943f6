import { useState } from 'react'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { demoFillingWords } from '#words/keeping/demoWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useBench } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { SignedBy } from '../../../parts/decisions/SignedBy.tsx'
import { useSigner } from '../../../parts/decisions/signer.ts'
import { StudyCrumb } from '../../../parts/programme/StudyCrumb.tsx'
import { go } from '../../../parts/routing/useRoute.ts'
import { useSaidInAddress } from '../../../parts/routing/useSaidInAddress.ts'
import { hashOf } from '../../../routes/route.ts'
import { Field } from '../../../widgets/Field.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { PullChoice } from './PullChoice.tsx'
import { addressOfPulls, pullsInAddress, pullsToBreak } from './pullsToBreak.ts'
import { type ChosenSpecimen, SpecimenChoice } from './SpecimenChoice.tsx'
import { sessionTitle } from './sessionTitle.ts'
import './breaking.css'

/** Begins a breaking session of pulls, of any specimens, or of both. The pulls that are chosen stand in the address. */
export function NewBreakingPage({ studyId }: { studyId?: number }) {
  const { breaking } = useBench()
  const waiting = useAnswer('pulls.list', { studyId: studyId ?? null })
  const pulls = pullsToBreak(waiting.value?.pulls ?? [])
  return (
    <div className="form-page">
      <p className="crumb">
        <StudyCrumb studyId={studyId} />
        <a href={hashOf({ page: 'breakings' })}>Breaking sessions</a>
      </p>
      <h1>New breaking session</h1>
      <Notice trouble={waiting.error ?? unreadableTrouble(waiting.value?.unreadable)} />
      {breaking === null ? null : (
        <p className="running-words">
          The session{' '}
          <a href={hashOf({ page: 'breaking', breakingSessionId: breaking.breakingSessionId })}>{breaking.title}</a> is
          open. End it first; only one is open at a time.
        </p>
      )}
      {waiting.value?.filling ? <p className="running-words">{demoFillingWords}</p> : null}
      {waiting.value === null || waiting.value.filling ? null : <NewBreakingForm pulls={pulls} />}
    </div>
  )
}

function NewBreakingForm({ pulls }: { pulls: readonly PullSummary[] }) {
  const signer = useSigner()
  const begin = useAction('breaking.begin')
  const [chosen, setChosen] = useState<ReadonlySet<string>>(() => new Set(pullsInAddress(location.hash)))
  const [specimens, setSpecimens] = useState<readonly ChosenSpecimen[]>([])
  const [typedTitle, setTypedTitle] = useState<string | null>(null)
  const [isMissing, setMissing] = useState(false)
  const picked = pulls.filter((pull) => chosen.has(pull.key))
  const total = picked.reduce((sum, { blocks }) => sum + blocks.waiting, specimens.length)
  const title = typedTitle ?? sessionTitle(picked, specimens.length)

  useSaidInAddress(addressOfPulls(picked.map(({ key }) => key)))

  async function submit(): Promise<boolean> {
    setMissing(total === 0)
    if (total === 0) return false
    const begun = await begin.run({
      title,
      pulls: picked.map(({ studyId, gluedOn, ageMonths }) => ({ studyId, gluedOn, ageMonths })),
      specimenIds: specimens.map(({ specimenId }) => specimenId),
      by: signer,
    })
    if (begun !== null) go({ page: 'bench' })
    return begun !== null
  }

  return (
    <Form onSubmit={submit}>
      <section aria-labelledby="pulls-title">
        <h2 id="pulls-title">Pulls with blocks on the shelf</h2>
        <PullChoice pulls={pulls} chosen={chosen} onChosen={setChosen} />
      </section>
      <SpecimenChoice specimens={specimens} onSpecimens={setSpecimens} />
      <Field
        label="Name of the session"
        value={title}
        maxLength={200}
        onChange={(event) => setTypedTitle(event.currentTarget.value)}
      />
      {isMissing ? <p className="field-error">Choose a pull, or add specimens.</p> : null}
      <Notice trouble={begin.error} onDismiss={begin.dismiss} />
      <div className="form-buttons">
        <button type="submit" className="button button-primary" aria-disabled={begin.pending || total === 0}>
          Begin with {countOf(total, 'specimen')}
        </button>
        <SignedBy />
      </div>
    </Form>
  )
}
