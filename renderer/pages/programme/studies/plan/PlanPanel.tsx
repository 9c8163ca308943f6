import { useDeferredValue, useMemo, useState } from 'react'
import type { StudyFields } from '#contract/programme/study.ts'
import type { ArchiveVariation } from '#contract/programme/studyRecord.ts'
import { differenceCurve } from '#domain/programme/study/differenceCurve.ts'
import { blocksNeeded, planFigures } from '#domain/programme/study/planFigures.ts'
import { differenceFigure } from '#figures/programme/differenceFigure.ts'
import {
  assumedCvPercent,
  assumedWords,
  blocksNeededWords,
  planAbout,
  planSentences,
  variationWords,
} from '#words/programme/study/planWords.ts'
import { noUnit, readQuantity } from '#words/units/typedQuantity.ts'
import { useAnswer } from '../../../../host/useAnswer.ts'
import { ExportedFigure } from '../../../../parts/figures/ExportedFigure.tsx'
import { useFigureOrigin } from '../../../../parts/figures/useFigureOrigin.ts'
import type { TypedForm } from '../../../../parts/forms/useTypedTexts.ts'
import { Field } from '../../../../widgets/Field.tsx'
import type { StudyErrors, StudyTexts } from './studyForm.ts'

/** The curve is drawn at least so far, and always beyond the plan. */
const leastShown = 30

/** What the study can and cannot detect as it is planned. */
export function PlanPanel({
  form: { shown, onTexts },
  errors,
  plan,
}: {
  form: TypedForm<StudyTexts>
  errors: StudyErrors
  plan: StudyFields | null
}) {
  const variation = useAnswer('studies.variation', {}).value
  const [wanted, setWanted] = useState('')
  const read = readQuantity(wanted, noUnit, 'the difference in percent')
  const wantedPercent = 'stored' in read && read.stored !== null && read.stored > 0 ? read.stored : null
  const bind = (key: 'cvPercent' | 'confidence' | 'power') => ({
    value: shown[key],
    error: errors[key] ?? null,
    unit: '%',
    onChange: (event: { currentTarget: { value: string } }) => onTexts({ ...shown, [key]: event.currentTarget.value }),
  })
  return (
    <section className="study-panel" aria-labelledby="plan-title">
      <h2 id="plan-title">What it can show</h2>
      <div className="field-pair">
        <Field label="Spread within a group" {...bind('cvPercent')} placeholder={spreadWithout(variation)} />
        <Field
          label="Difference that matters"
          unit="%"
          value={wanted}
          error={'error' in read ? read.error : null}
          onChange={(event) => setWanted(event.currentTarget.value)}
        />
        <Field label="Confidence" {...bind('confidence')} />
        <Field label="Power" {...bind('power')} />
      </div>
      <p className="quiet">{variation === null ? assumedWords : `${variationWords(variation)}.`}</p>
      {plan === null ? null : <PlanFindings {...{ plan, variation, wantedPercent }} />}
    </section>
  )
}

function spreadWithout(variation: ArchiveVariation | null): string {
  return String(Number((variation?.cvPercent ?? assumedCvPercent).toPrecision(3)))
}

function PlanFindings({
  plan,
  variation,
  wantedPercent,
}: {
  plan: StudyFields
  variation: ArchiveVariation | null
  wantedPercent: number | null
}) {
  const cvPercent = plan.cvPercent ?? variation?.cvPercent ?? assumedCvPercent
  const { blocksPerCell, confidence, power } = plan
  const originOf = useFigureOrigin()
  const most = useDeferredValue(Math.min(Math.max(leastShown, Math.ceil(1.25 * blocksPerCell)), 200))
  const curve = useMemo(
    () => differenceCurve({ comparison: 'pair', groups: 2, confidence }, power, cvPercent, most),
    [confidence, power, cvPercent, most],
  )
  return (
    <>
      <ul className="plan-sentences" aria-live="polite">
        {planSentences(planFigures(plan, cvPercent)).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {wantedPercent === null ? null : (
          <li>
            <strong>{blocksNeededWords(wantedPercent, blocksNeeded(wantedPercent, plan, cvPercent))}</strong>
          </li>
        )}
      </ul>
      <ExportedFigure
        draw={(size) => differenceFigure({ curve, planned: blocksPerCell, wantedPercent }, size)}
        origin={() => originOf(planAbout(plan, cvPercent))}
      />
    </>
  )
}
