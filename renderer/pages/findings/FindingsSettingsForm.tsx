import type { FindingsSettings } from '#contract/findings/keptFinding.ts'
import type { Findings } from '#contract/findings/procedures.ts'
import { agesOf } from '#domain/findings/askedBlocks.ts'
import { ageInWords, gapInWords } from '#words/breaks/groupName.ts'
import { tellingNames } from '#words/findings/groupNames.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Choice } from '../../widgets/Choice.tsx'
import { Field, SelectField } from '../../widgets/Field.tsx'
import {
  askedQuestions,
  percentNeeded,
  readMargin,
  treatmentOf,
  treatments,
  typedChange,
  typedShare,
  typedYears,
} from './findingsQuestions.ts'
import { OverallForm } from './overall/OverallForm.tsx'
import { StudyPick } from './StudyPick.tsx'
import { TornWoodNumbers } from './torn/TornWoodNumbers.tsx'

const distinct = (names: readonly string[]) => [...new Set(names)].filter((one) => one !== '').sort()

/** The question, and of which blocks it is asked. */
export function FindingsSettingsForm({
  settings,
  onSettings,
  onStudy,
  all,
}: {
  settings: FindingsSettings
  onSettings(change: Partial<FindingsSettings>): void
  onStudy(studyId: number | null): void
  all: Findings | null
}) {
  const { length } = useQuantities()
  const groups = all?.groups ?? []
  const adhesives = distinct(groups.map(({ adhesive }) => adhesive))
  const names = [...tellingNames(groups, length.text)]
  return (
    <section className="findings-settings" aria-label="Question">
      <Choice
        label="Question"
        labelHidden
        options={askedQuestions}
        value={settings.asked}
        onChange={(asked) => onSettings({ asked })}
      />
      <div className="findings-picks">
        <StudyPick studyId={settings.studyId} onStudy={onStudy} />
        {settings.asked === 'overall' ? null : <TraitPicks settings={settings} onSettings={onSettings} all={all} />}
        {settings.asked === 'changed' || settings.asked === 'next' ? null : (
          <SelectField
            label="Age"
            value={settings.ageMonths}
            onChange={(event) => onSettings({ ageMonths: event.currentTarget.value })}
          >
            <option value="">youngest with several groups</option>
            {agesOf(all?.blocks ?? []).map((age) => (
              <option key={age} value={String(age)}>
                {ageInWords(age)}
              </option>
            ))}
          </SelectField>
        )}
        <OfTheQuestion settings={settings} onSettings={onSettings} names={names} adhesives={adhesives} />
        {settings.asked === 'next' ? null : (
          <TornWoodNumbers
            woodFailure={settings.asked === 'torn-wood' ? 'all' : treatmentOf(settings).woodFailure}
            numbers={settings}
            onNumbers={onSettings}
          />
        )}
        {settings.asked === 'torn-wood' || settings.asked === 'next' ? null : (
          <SelectField
            label="Torn wood"
            value={treatmentOf(settings).woodFailure}
            onChange={(event) =>
              onSettings({ woodFailure: treatments.find(({ value }) => value === event.currentTarget.value)!.value })
            }
          >
            {treatments
              .filter(({ value }) => value !== 'censored' || settings.asked === 'changed')
              .map(({ value, label }) => (
                <option key={value} value={value}>
                  {label}
                </option>
              ))}
          </SelectField>
        )}
      </div>
      {settings.asked === 'overall' ? (
        <OverallForm
          overall={settings.overall}
          groups={groups}
          onOverall={(change) => onSettings({ overall: { ...settings.overall, ...change } })}
        />
      ) : null}
    </section>
  )
}

/** Of which blocks it is asked, by what they are; a trait that all have in common is nothing to choose. */
function TraitPicks({
  settings,
  onSettings,
  all,
}: {
  settings: FindingsSettings
  onSettings(change: Partial<FindingsSettings>): void
  all: Findings | null
}) {
  const { length } = useQuantities()
  const groups = all?.groups ?? []
  const jointTypes = distinct(groups.map(({ jointType }) => jointType))
  const gaps = [...new Set(groups.map(({ bondLineGapMm }) => bondLineGapMm))].sort((a, b) => (a ?? -1) - (b ?? -1))
  const pick = (key: 'adhesive' | 'exposure' | 'jointType' | 'bondLineGapMm') => ({
    value: settings[key],
    onChange: (event: { currentTarget: { value: string } }) => onSettings({ [key]: event.currentTarget.value }),
  })
  const options = (values: readonly string[]) => values.map((value) => <option key={value}>{value}</option>)
  return (
    <>
      <SelectField label="Adhesive" {...pick('adhesive')}>
        <option value="">all</option>
        {options(distinct(groups.map(({ adhesive }) => adhesive)))}
      </SelectField>
      <SelectField label="Exposure" {...pick('exposure')}>
        <option value="">all</option>
        {options(distinct(groups.map(({ exposure }) => exposure)))}
      </SelectField>
      {jointTypes.length < 2 && settings.jointType === '' ? null : (
        <SelectField label="Joint type" {...pick('jointType')}>
          <option value="">all</option>
          {options(jointTypes)}
        </SelectField>
      )}
      {gaps.length < 2 && settings.bondLineGapMm === '' ? null : (
        <SelectField label="Gap" {...pick('bondLineGapMm')}>
          <option value="">all</option>
          {gaps.map((gap) => (
            <option key={gap} value={String(gap)}>
              {gapInWords(gap, length.text)}
            </option>
          ))}
        </SelectField>
      )}
    </>
  )
}

/** What one question alone asks for. */
function OfTheQuestion({
  settings,
  onSettings,
  names,
  adhesives,
}: {
  settings: FindingsSettings
  onSettings(change: Partial<FindingsSettings>): void
  /** Groups by their keys, as they are called. */
  names: readonly (readonly [string, string])[]
  adhesives: readonly string[]
}) {
  if (settings.asked === 'next') return <OfNext settings={settings} onSettings={onSettings} adhesives={adhesives} />
  if (settings.asked === 'changed')
    return (
      <>
        <Field
          label="Share of the first strength"
          unit="%"
          inputMode="numeric"
          value={settings.sharePercent}
          error={typedShare(settings.sharePercent) === null ? percentNeeded('below 100', 80) : null}
          onChange={(event) => onSettings({ sharePercent: event.currentTarget.value })}
        />
        <Field
          label="At the age of"
          unit="years"
          placeholder="end of the programme"
          value={settings.atYears}
          error={
            settings.atYears.trim() !== '' && typedYears(settings.atYears) === null
              ? 'Say an age above 0, at most 100 years; the end of the programme is used.'
              : null
          }
          onChange={(event) => onSettings({ atYears: event.currentTarget.value })}
        />
      </>
    )
  if (settings.asked !== 'as-good') return null
  return (
    <>
      <SelectField
        label="Reference"
        value={settings.reference}
        onChange={(event) => onSettings({ reference: event.currentTarget.value })}
      >
        <option value="">choose a group</option>
        {names.map(([key, name]) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </SelectField>
      <Field
        label="Alike within"
        unit="%"
        inputMode="numeric"
        value={settings.marginPercent}
        error={readMargin(settings.marginPercent).error}
        onChange={(event) => onSettings({ marginPercent: event.currentTarget.value })}
      />
    </>
  )
}

function OfNext({
  settings,
  onSettings,
  adhesives,
}: {
  settings: FindingsSettings
  onSettings(change: Partial<FindingsSettings>): void
  adhesives: readonly string[]
}) {
  return (
    <>
      <Field
        label="Change to be seen"
        unit="% a year"
        value={settings.changePercent}
        error={typedChange(settings.changePercent) === null ? percentNeeded('at most 100', 1) : null}
        onChange={(event) => onSettings({ changePercent: event.currentTarget.value })}
      />
      <SelectField
        label="Reference"
        value={settings.referenceAdhesive}
        onChange={(event) => onSettings({ referenceAdhesive: event.currentTarget.value })}
      >
        <option value="">as the study says</option>
        {adhesives.map((adhesive) => (
          <option key={adhesive}>{adhesive}</option>
        ))}
      </SelectField>
      <Field
        label="Difference that matters"
        unit="%"
        value={settings.marginPercent}
        error={readMargin(settings.marginPercent).error === null ? null : percentNeeded('below 100', 10)}
        onChange={(event) => onSettings({ marginPercent: event.currentTarget.value })}
      />
    </>
  )
}
