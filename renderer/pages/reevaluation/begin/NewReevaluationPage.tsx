import { type FormEvent, useCallback, useRef, useState } from 'react'
import { type DetectionSettings, detectionSettings } from '#contract/breaks/detection.ts'
import { changedWords } from '#words/breaks/thresholdWords.ts'
import { askForName } from '#words/settings/signatureWords.ts'
import { countOf } from '#words/units/counts.ts'
import { usePreferences } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useSigner } from '../../../parts/decisions/signature.ts'
import { useSelectedBreaks } from '../../../parts/lists/selectionStore.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { focusFirstWrong } from '../../../widgets/firstWrong.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { calibrationOptions } from './calibrationOptions.ts'
import { ThresholdFieldset } from './ThresholdFieldset.tsx'
import { noThresholds, readThresholds, type ThresholdErrors } from './thresholdForm.ts'
import { type BreaksChoice, type BreaksSearch, WhichBreaks } from './WhichBreaks.tsx'
import './newReevaluation.css'

/** Chooses which breaks are evaluated once more, and how. `breakId`: the one that the person came from. */
export function NewReevaluationPage({ breakId = null }: { breakId?: number | null }) {
  const quantities = useQuantities()
  const { capacityN } = usePreferences()
  const selected = useSelectedBreaks()
  const one = useAnswer('breaks.get', breakId === null ? null : { breakId })
  const calibrations = useAnswer('calibrations.list', {})
  const begin = useAction('reevaluations.begin')
  const [choice, setChoice] = useState<BreaksChoice>(
    breakId !== null ? 'one' : selected.length > 0 ? 'selected' : 'search',
  )
  const [search, setSearch] = useState<BreaksSearch>({ text: '', status: 'all' })
  const found = useAnswer('breaks.ids', choice === 'search' ? { ...search, sort: 'startedAt' } : null)
  const [calibrationId, setCalibrationId] = useState<number | null>(null)
  const [texts, setTexts] = useState(noThresholds)
  const [errors, setErrors] = useState<ThresholdErrors>({})
  const [by, setBy] = useState(useSigner())
  const [asked, setAsked] = useState(false)
  const form = useRef<HTMLFormElement>(null)
  const onSearch = useCallback((next: BreaksSearch) => setSearch(next), [])

  const record = choice === 'one' ? one.value : null
  const breakIds =
    choice === 'one' ? (breakId === null ? [] : [breakId]) : choice === 'selected' ? selected : found.value
  const read = readThresholds(texts, quantities)
  const options = calibrationOptions(calibrations.value ?? [], record?.header.readingUnit ?? null)
  const chosen = options.find((option) => option.calibrationId === calibrationId) ?? null
  const beside: DetectionSettings = record?.header.settings ?? detectionSettings.parse({ capacityN })

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    setErrors(read.errors ?? {})
    const who = by.trim()
    if (read.settings === null || who === '') {
      focusFirstWrong(form.current)
      return
    }
    if (breakIds === null || breakIds.length === 0) return
    const begun = await begin.run({
      breakIds: [...breakIds],
      calibrationId: chosen?.calibrationId ?? null,
      settings: read.settings,
      by: who,
    })
    if (begun !== null) go({ page: 'reevaluation', reevaluationId: begun.reevaluationId })
  }

  const changed = read.settings === null ? [] : changedWords(read.settings, quantities)
  return (
    <div className="form-page new-reevaluation">
      <p className="crumb">
        <a href={hashOf({ page: 'breaks' })}>Breaks</a>
        <a href={hashOf({ page: 'reevaluations' })}>Evaluated again</a>
        {breakId === null ? null : (
          <a href={hashOf({ page: 'break', breakId })}>{one.value?.summary.number ?? `Break ${breakId}`}</a>
        )}
      </p>
      <h1 className="new-reevaluation-title">Evaluate again</h1>
      <p className="prose">
        Stored curves are read once more; the readings themselves are never touched. The new results are laid beside the
        ones in force and change nothing until you adopt them. The bench and captures go on meanwhile.
      </p>
      <form className="form" ref={form} noValidate onSubmit={(event) => void submit(event)}>
        <Notice trouble={one.error ?? found.error} />
        <WhichBreaks
          oneWords={breakId === null ? null : `Only ${one.value?.summary.number ?? `break ${breakId}`}`}
          selected={selected.length}
          choice={choice}
          onChoice={setChoice}
          search={search}
          onSearch={onSearch}
          found={found.value?.length ?? null}
          error={asked && breakIds?.length === 0 ? 'There is no break to evaluate: choose others.' : null}
        />
        <SelectField
          label="Under which calibration"
          value={calibrationId ?? ''}
          onChange={({ currentTarget: { value } }) => setCalibrationId(value === '' ? null : Number(value))}
          hint={
            record === null
              ? 'A calibration fits only readings in its own unit; breaks with others are listed and stay as they are.'
              : `Only those for readings in ${record.header.readingUnit}, as this break has them.`
          }
        >
          <option value="">Each under the scale of its result in force</option>
          {options.map((option) => (
            <option key={option.calibrationId} value={option.calibrationId}>
              {option.words}
            </option>
          ))}
        </SelectField>
        <section aria-labelledby="thresholds-title">
          <h2 id="thresholds-title" className="new-reevaluation-head">
            Which thresholds differ
          </h2>
          <p className="prose">
            What is left empty stays as it was at capture. With nothing changed the same settings are read by the
            present method, which is worth doing after an update.
          </p>
          <ThresholdFieldset
            texts={texts}
            errors={asked ? (read.errors ?? {}) : errors}
            onTexts={setTexts}
            beside={beside}
            besideWord={record === null ? 'usual' : 'at capture'}
          />
        </section>
        <div className="new-reevaluation-end">
          <Field
            label="Who"
            required
            value={by}
            maxLength={200}
            onChange={(event) => setBy(event.currentTarget.value)}
            error={asked && by.trim() === '' ? askForName : null}
          />
          <p className="new-reevaluation-sum" aria-live="polite">
            <strong>{breakIds === null ? '…' : countOf(breakIds.length, 'break')}</strong>,{' '}
            {chosen === null ? 'each under its own scale' : `under “${chosen.name}”`},{' '}
            {read.settings === null
              ? 'thresholds that cannot be read yet'
              : changed.length === 0
                ? 'thresholds as at capture'
                : changed.join(', ')}
            .
          </p>
        </div>
        <Notice trouble={begin.error} onDismiss={begin.dismiss} />
        <div className="form-buttons">
          <button type="submit" className="button button-primary" disabled={begin.pending || breakIds === null}>
            Evaluate again
          </button>
          <a
            className="button button-quiet"
            href={hashOf(breakId === null ? { page: 'reevaluations' } : { page: 'break', breakId })}
          >
            Cancel
          </a>
        </div>
      </form>
    </div>
  )
}
