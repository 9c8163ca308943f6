import type { Findings } from '#contract/findings/procedures.ts'
import { ageInWords } from '#words/breaks/groupName.ts'
import { tellingNames } from '#words/findings/groupNames.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Choice } from '../../widgets/Choice.tsx'
import { Field, SelectField } from '../../widgets/Field.tsx'
import {
  agesOf,
  askedQuestions,
  type FindingsSettings,
  readMargin,
  treatmentOf,
  treatments,
  typedFactor,
  typedLimit,
} from './findingsQuestions.ts'

const distinct = (names: readonly string[]) => [...new Set(names)].filter((one) => one !== '').sort()

/** The question, and of which blocks it is asked. */
export function FindingsSettingsForm({
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
  const names = [...tellingNames(groups, length.text)]
  const pick = (key: 'adhesive' | 'exposure' | 'ageMonths') => ({
    value: settings[key],
    onChange: (event: { currentTarget: { value: string } }) => onSettings({ [key]: event.currentTarget.value }),
  })
  const options = (values: readonly string[]) => values.map((value) => <option key={value}>{value}</option>)
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
        <SelectField label="Adhesive" {...pick('adhesive')}>
          <option value="">all</option>
          {options(distinct(groups.map(({ adhesive }) => adhesive)))}
        </SelectField>
        <SelectField label="Exposure" {...pick('exposure')}>
          <option value="">all</option>
          {options(distinct(groups.map(({ exposure }) => exposure)))}
        </SelectField>
        {settings.asked === 'changed' ? null : (
          <SelectField label="Age" {...pick('ageMonths')}>
            <option value="">youngest with several groups</option>
            {agesOf(all?.blocks ?? []).map((age) => (
              <option key={age} value={String(age)}>
                {ageInWords(age)}
              </option>
            ))}
          </SelectField>
        )}
        <OfTheQuestion settings={settings} onSettings={onSettings} names={names} />
        <TornWoodNumbers settings={settings} onSettings={onSettings} />
        {settings.asked === 'torn-wood' ? null : (
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
    </section>
  )
}

/** The numbers of the treatments that are looked at. */
function TornWoodNumbers({
  settings,
  onSettings,
}: {
  settings: FindingsSettings
  onSettings(change: Partial<FindingsSettings>): void
}) {
  const { asked, limitPercent, adjustFactor } = settings
  const { woodFailure } = treatmentOf(settings)
  const all = asked === 'torn-wood'
  return (
    <>
      {all || woodFailure === 'bond-only' || woodFailure === 'censored' ? (
        <Field
          label="Wood failure from"
          unit="%"
          value={limitPercent}
          error={typedLimit(limitPercent) === null ? 'Say a percentage above 0, at most 100; 75 is used.' : null}
          onChange={(event) => onSettings({ limitPercent: event.currentTarget.value })}
        />
      ) : null}
      {all || woodFailure === 'adjusted' ? (
        <Field
          label="Factor of the adjustment"
          value={adjustFactor}
          error={typedFactor(adjustFactor) === null ? 'Say a number of 0 or more; 1 is used.' : null}
          onChange={(event) => onSettings({ adjustFactor: event.currentTarget.value })}
        />
      ) : null}
    </>
  )
}

/** What one question alone asks for. */
function OfTheQuestion({
  settings,
  onSettings,
  names,
}: {
  settings: FindingsSettings
  onSettings(change: Partial<FindingsSettings>): void
  /** Groups by their keys, as they are called. */
  names: readonly (readonly [string, string])[]
}) {
  if (settings.asked === 'changed')
    return (
      <>
        <Field
          label="Share of the first strength"
          unit="%"
          inputMode="numeric"
          value={settings.sharePercent}
          onChange={(event) => onSettings({ sharePercent: event.currentTarget.value })}
        />
        <Field
          label="At the age of"
          unit="years"
          placeholder="end of the programme"
          value={settings.atYears}
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
