import { useState } from 'react'
import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import { neverAboveWords } from '#words/bench/cautions.ts'
import { planLength } from '#words/calibration/routine/planLength.ts'
import { usualWeightsWords } from '#words/calibration/weightWords.ts'
import { useBench } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useSingleKeys } from '../../../parts/routing/singleKeys.ts'
import { hashOf } from '../../../routes/route.ts'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Keys } from '../../../widgets/Keys.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { StepMatrix } from '../run/StepMatrix.tsx'
import { usualWeights } from '../weights/weightForm.ts'
import { ConditionFields } from './ConditionFields.tsx'
import { type PlanTexts, readConditions, readPlan } from './planForm.ts'
import { usePlanTexts } from './planStore.ts'
import './plan.css'
import { SignedBy } from '../../../parts/decisions/SignedBy.tsx'
import { useSigner } from '../../../parts/decisions/signer.ts'

/** What is going to be done: where the bench stands, which weights in which steps, how often. */
export function PlanView() {
  const bench = useBench()
  const signer = useSigner()
  const quantities = useQuantities()
  const form = usePlanTexts()
  const texts = form.shown
  const change = (part: Partial<PlanTexts>) => form.onTexts({ ...texts, ...part })
  const [asked, setAsked] = useState(false)
  const kept = useAnswer('weights.list', {})
  const save = useAction('weights.save')
  const begin = useAction('calibration.begin')
  const weights = save.value?.weights ?? kept.value?.weights ?? []
  const known = new Set(weights.map(({ name }) => name))
  const steps = texts.steps.map((step) => step.filter((name) => known.has(name)))
  const current = { ...form.readable, steps }
  const read = readPlan(current, weights, quantities)
  const { conditions } = readConditions(current, quantities)
  const errors = asked ? (read.errors ?? {}) : {}
  const connected = bench.connection.status === 'open'

  async function start(): Promise<boolean> {
    setAsked(true)
    return read.plan !== null && (await begin.run({ plan: read.plan, by: signer })) !== null
  }

  useSingleKeys((key) => {
    if (key !== 'Enter') return false
    void start()
    return true
  })

  return (
    <Form className="plan" keepsItself onSubmit={start}>
      <PlanHead />
      <div className="plan-columns">
        <ConditionFields texts={texts} errors={errors} gravity={conditions?.gravity ?? null} onChange={change} />
        <section className="plan-steps" aria-labelledby="steps-title">
          <div className="section-head">
            <h2 id="steps-title">Steps: what hangs together</h2>
            <a href={hashOf({ page: 'weights' })}>Change the weights</a>
          </div>
          <Notice trouble={kept.error ?? save.error} />
          {weights.length === 0 && !kept.pending ? (
            <div className="empty-start">
              <p>No weights entered yet.</p>
              <button
                type="button"
                className="button"
                onClick={() => void save.run({ weights: [...usualWeights[quantities.system]], by: signer })}
              >
                {usualWeightsWords[quantities.system]}
              </button>
            </div>
          ) : (
            <StepMatrix
              weights={weights}
              steps={steps}
              conditions={conditions}
              capacityN={bench.capacityN}
              error={errors.steps ?? null}
              onSteps={(next) => change({ steps: next })}
            />
          )}
        </section>
      </div>
      <footer className="plan-foot">
        <Notice trouble={begin.error} onDismiss={begin.dismiss} />
        <BeginLine connected={connected} pending={begin.pending} asked={asked} plan={read.plan} />
      </footer>
    </Form>
  )
}

function PlanHead() {
  const { capacityN } = useBench()
  const { force } = useQuantities()
  return (
    <header className="record-head">
      <div>
        <p className="crumb">
          <a href={hashOf({ page: 'calibration' })}>Calibration</a>
        </p>
        <h1>Calibrate with known weights</h1>
      </div>
      <p className="caution-words">
        Weights can fall: feet clear, nothing below that breaks.
        <br />
        {neverAboveWords(capacityN, force)}
      </p>
    </header>
  )
}

/** Begins the routine, or says what is still in its way. */
function BeginLine({
  connected,
  pending,
  asked,
  plan,
}: {
  connected: boolean
  pending: boolean
  /** The person has tried to begin. */
  asked: boolean
  plan: CalibrationPlan | null
}) {
  const missing = asked
    ? 'Not yet: something above is missing or cannot be read.'
    : 'What you type here is kept, also after a restart.'
  const words = plan === null ? missing : planLength(plan)
  return (
    <div className="form-buttons">
      <button
        type="submit"
        className="button button-primary button-large"
        aria-disabled={!connected || pending}
        aria-describedby="plan-words"
      >
        Begin <Keys keys="Enter" />
      </button>
      <p id="plan-words" className="plan-words">
        {connected ? words : 'Connect the amplifier first; what you typed is kept.'}
      </p>
      {connected ? null : (
        <a className="button" href={hashOf({ page: 'connect' })}>
          Connect
        </a>
      )}
      <SignedBy />
    </div>
  )
}
