import { type ReactNode, useState } from 'react'
import { type DetectionChange, detectionSettings } from '#contract/breaks/detection.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { changedWords } from '#words/breaks/thresholdWords.ts'
import { askForName } from '#words/settings/signatureWords.ts'
import { countOf } from '#words/units/counts.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { usePreferences } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { untouched, useTypedTexts } from '../../../parts/forms/useTypedTexts.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { calibrationOptions } from './calibrationOptions.ts'
import { ThresholdFieldset } from './ThresholdFieldset.tsx'
import { noThresholds, readThresholds, thresholdUnits } from './thresholdForm.ts'
import { useChosenBreaks } from './useChosenBreaks.ts'
import { WhichBreaks } from './WhichBreaks.tsx'
import './newReevaluation.css'
import { rememberSigner, useSigner } from '../../../parts/decisions/signer.ts'

/** Chooses which breaks are evaluated once more, and how. `breakId`: the one that the person came from. */
export function NewReevaluationPage({ breakId = null }: { breakId?: number | null }) {
  const quantities = useQuantities()
  const { capacityN } = usePreferences()
  const breaks = useChosenBreaks(breakId)
  const calibrations = useAnswer('calibrations.list', {})
  const begin = useAction('reevaluations.begin')
  const [calibrationId, setCalibrationId] = useState<number | null>(null)
  const texts = useTypedTexts(() => untouched(noThresholds), thresholdUnits)
  const [by, setBy] = useState(useSigner())
  const [asked, setAsked] = useState(false)

  const { record, breakIds } = breaks
  const read = readThresholds(texts.readable, quantities)
  const options = calibrationOptions(calibrations.value?.rows ?? [], record?.header.readingUnit ?? null)
  const chosen = options.find((option) => option.calibrationId === calibrationId) ?? null
  const oneName = breaks.oneName ?? (breakId === null ? null : `break ${breakId}`)

  async function submit(): Promise<boolean> {
    setAsked(true)
    const who = by.trim()
    if (read.settings === null || who === '' || breakIds === null || breakIds.length === 0) return false
    rememberSigner(who)
    const begun = await begin.run({
      breakIds: [...breakIds],
      calibrationId: chosen?.calibrationId ?? null,
      settings: read.settings,
      by: who,
    })
    if (begun !== null) go({ page: 'reevaluation', reevaluationId: begun.reevaluationId })
    return begun !== null
  }

  return (
    <div className="form-page new-reevaluation">
      <PageHead breakId={breakId} oneName={breaks.oneName} />
      <Form onSubmit={submit}>
        <Notice trouble={breaks.error} />
        <WhichBreaks
          oneWords={oneName === null ? null : `Only ${oneName}`}
          selected={breaks.selected}
          choice={breaks.choice}
          onChoice={breaks.setChoice}
          search={breaks.search}
          onSearch={breaks.onSearch}
          found={breaks.found}
          error={asked && breakIds?.length === 0 ? 'There is no break to evaluate: choose others.' : null}
        />
        <CalibrationField
          options={options}
          unit={record?.header.readingUnit ?? null}
          value={calibrationId}
          onChoose={setCalibrationId}
        />
        <ThresholdSection>
          <ThresholdFieldset
            texts={texts.shown}
            errors={asked ? (read.errors ?? {}) : {}}
            onTexts={texts.onTexts}
            beside={record?.header.settings ?? detectionSettings.parse({ capacityN })}
            besideWord={record === null ? 'usual' : 'when recorded'}
          />
        </ThresholdSection>
        <div className="new-reevaluation-end">
          <Field
            label="Name or initials"
            required
            value={by}
            maxLength={200}
            onChange={(event) => setBy(event.currentTarget.value)}
            error={asked && by.trim() === '' ? askForName : null}
          />
          <p className="new-reevaluation-sum" aria-live="polite">
            <strong>{breakIds === null ? '…' : countOf(breakIds.length, 'break')}</strong>,{' '}
            {chosen === null ? 'each with the calibration or scale it has' : `under “${chosen.name}”`},{' '}
            {thresholdSum(read.settings, quantities)}.
          </p>
        </div>
        <Notice trouble={begin.error} onDismiss={begin.dismiss} />
        <div className="form-buttons">
          <button type="submit" className="button button-primary" aria-disabled={begin.pending || breakIds === null}>
            Evaluate again
          </button>
          <a
            className="button button-quiet"
            href={hashOf(breakId === null ? { page: 'reevaluations' } : { page: 'break', breakId })}
          >
            Cancel
          </a>
        </div>
      </Form>
    </div>
  )
}

function ThresholdSection({ children }: { children: ReactNode }) {
  return (
    <section aria-labelledby="thresholds-title">
      <h2 id="thresholds-title" className="new-reevaluation-head">
        Detection settings to change
      </h2>
      <p className="prose">
        Leave a field empty to keep the setting that the break was recorded with. With nothing changed the present
        method reads the curve with the same settings, which is worth doing after an update.
      </p>
      {children}
    </section>
  )
}

function PageHead({ breakId, oneName }: { breakId: number | null; oneName: string | null }) {
  return (
    <>
      <p className="crumb">
        <a href={hashOf({ page: 'breaks' })}>Breaks</a>
        <a href={hashOf({ page: 'reevaluations' })}>Re-evaluations</a>
        {breakId === null ? null : <a href={hashOf({ page: 'break', breakId })}>{oneName ?? `Break ${breakId}`}</a>}
      </p>
      <h1 className="new-reevaluation-title">Evaluate again</h1>
      <p className="prose">
        Evaluates stored curves again; the readings are never changed. The new results stand beside the ones in force
        and change nothing until you adopt them. The bench goes on recording meanwhile.
      </p>
    </>
  )
}

/** The calibration that the forces are found with again. `unit`: that of the readings, where one break alone is chosen. */
function CalibrationField({
  options,
  unit,
  value,
  onChoose,
}: {
  options: ReturnType<typeof calibrationOptions>
  unit: ReadingUnit | null
  value: number | null
  onChoose(calibrationId: number | null): void
}) {
  return (
    <SelectField
      label="Calibration to use"
      value={value ?? ''}
      onChange={(event) => onChoose(event.currentTarget.value === '' ? null : Number(event.currentTarget.value))}
      hint={
        unit === null
          ? 'A calibration fits only readings in its own unit; breaks with others are listed and stay as they are.'
          : `Only those for readings in ${unit}, as this break has them.`
      }
    >
      <option value="">Keep the calibration or scale that each result has now</option>
      {options.map((option) => (
        <option key={option.calibrationId} value={option.calibrationId}>
          {option.words}
        </option>
      ))}
    </SelectField>
  )
}

function thresholdSum(settings: DetectionChange | null, quantities: Quantities): string {
  if (settings === null) return 'settings that cannot be read yet'
  return changedWords(settings, quantities).join(', ') || 'settings as recorded'
}
