import { useState } from 'react'
import type { CheckState } from '#contract/calibration/checkWeight.ts'
import { weightsFall } from '#words/bench/cautions.ts'
import { verdictWords } from '#words/calibration/verdictWords.ts'
import { loadText } from '#words/calibration/weightWords.ts'
import { signedNumber, writeFixed } from '#words/units/numbers.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { SignedBy } from '../../../parts/decisions/SignedBy.tsx'
import { useSigner } from '../../../parts/decisions/signer.ts'
import { useSingleKeys } from '../../../parts/routing/singleKeys.ts'
import { hashOf } from '../../../routes/route.ts'
import { Keys } from '../../../widgets/Keys.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { OutsideRange } from './OutsideRange.tsx'
import { VerdictShape } from './VerdictShape.tsx'

const storageKey = 'breakledger.check-weight'

/** Chooses the weight and begins; after a check, what it said and what to do. */
export function CheckStart({ state, calibration }: { state: CheckState; calibration: string }) {
  const signer = useSigner()
  const { force } = useQuantities()
  const kept = useAnswer('weights.list', {})
  const begin = useAction('checkWeight.begin')
  const weights = kept.value?.weights ?? []
  const [chosen, setChosen] = useState(() => state.weights[0] ?? localStorage.getItem(storageKey) ?? '')
  const name = weights.some((weight) => weight.name === chosen) ? chosen : (weights.at(-1)?.name ?? '')
  const { result } = state

  function start(): void {
    if (name !== '' && !begin.pending) void begin.run({ weights: [name], by: signer })
  }
  useSingleKeys((key) => {
    if (key !== 'Enter') return false
    start()
    return true
  })

  return (
    <section className="check-now" aria-label="Check now">
      {result === null ? null : (
        <div className="verdict" data-standing={result.verdict.standing} role="status">
          <VerdictShape standing={result.verdict.standing} />
          <div>
            <p className="verdict-sentence">{verdictWords(result.verdict, force).sentence}</p>
            <p className="verdict-action">{verdictWords(result.verdict, force).action}</p>
            <p className="quiet">
              {loadText(result.check.indicatedN, force)} read, {loadText(result.check.expectedN, force)} expected:{' '}
              {signedNumber((result.check.indicatedN - result.check.expectedN) * force.factor, 2)} {force.unit}, SD{' '}
              {writeFixed(result.check.sdN * force.factor, 2)} {force.unit} of {result.check.count} samples
            </p>
            <OutsideRange expectedN={result.check.expectedN} />
          </div>
        </div>
      )}
      <p className="prose">
        Keep one weight for this check only. Its reading is compared with what <strong>{calibration}</strong> gives for
        it.
      </p>
      {weights.length === 0 && !kept.pending ? (
        <p>
          No weights entered yet. <a href={hashOf({ page: 'weights' })}>Enter the check weight first.</a>
        </p>
      ) : (
        <fieldset className="choice">
          <legend>Check with</legend>
          <div className="weight-choice">
            {weights.map((weight) => (
              <label key={weight.name}>
                <input
                  type="radio"
                  name="check-weight"
                  checked={weight.name === name}
                  onChange={() => {
                    localStorage.setItem(storageKey, weight.name)
                    setChosen(weight.name)
                  }}
                />
                {weight.name}
              </label>
            ))}
          </div>
        </fieldset>
      )}
      <Notice trouble={kept.error ?? begin.error ?? state.problem} />
      <div>
        <button
          type="button"
          className="button button-primary button-large"
          aria-disabled={name === '' || begin.pending}
          onClick={start}
        >
          {result === null ? 'Check now' : 'Check again'} <Keys keys="Enter" />
        </button>
      </div>
      <SignedBy />
      <p className="quiet">{weightsFall}</p>
    </section>
  )
}
