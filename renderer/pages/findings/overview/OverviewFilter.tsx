import type { ReactNode } from 'react'
import type { Overview } from '#contract/findings/overview.ts'
import { ageInWords, gapInWords } from '#words/breaks/groupName.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { SelectField } from '../../../widgets/Field.tsx'
import { TornWoodNumbers } from '../torn/TornWoodNumbers.tsx'
import { levelOf, levelText, meanTreatments, type OverviewSettings, treatmentOfLabel } from './overviewSettings.ts'

const views = [
  { value: 'blocks', label: 'Every block' },
  { value: 'means', label: 'Table of means' },
] as const

/** What is looked at, and of which blocks. */
export function OverviewFilter({
  settings,
  onSettings,
  levels,
  children,
}: {
  settings: OverviewSettings
  onSettings(change: Partial<OverviewSettings>): void
  levels: Overview['levels']
  /** The choice of a study. */
  children: ReactNode
}) {
  const { length } = useQuantities()
  const pick = (key: 'adhesive' | 'jointType' | 'gap' | 'exposure' | 'age' | 'reference', label: string) => ({
    label,
    value: settings[key],
    onChange: (event: { currentTarget: { value: string } }) => onSettings({ [key]: event.currentTarget.value }),
  })
  // What was chosen before stays in sight, also where these blocks do not have it
  const named = (values: readonly string[], chosen: string) =>
    [...new Set([...values, chosen])]
      .filter((value) => value !== '')
      .map((value) => <option key={value}>{value}</option>)
  const counted = (values: readonly (number | null)[], chosen: string, words: (value: number | null) => string) =>
    [...new Set([...values.map(levelText), chosen])]
      .filter((text) => text !== '')
      .map((text) => (
        <option key={text} value={text}>
          {words(levelOf(text))}
        </option>
      ))
  return (
    <section className="overview-filter" aria-label="What is shown">
      <Choice
        label="View"
        labelHidden
        options={views}
        value={settings.view}
        onChange={(view) => onSettings({ view })}
      />
      {children}
      <SelectField {...pick('adhesive', 'Adhesive')}>
        <option value="">all</option>
        {named(levels.adhesives, settings.adhesive)}
      </SelectField>
      <SelectField {...pick('jointType', 'Joint')}>
        <option value="">all</option>
        {named(levels.jointTypes, settings.jointType)}
      </SelectField>
      <SelectField {...pick('gap', 'Gap')}>
        <option value="">all</option>
        {counted(levels.bondLineGapsMm, settings.gap, (gapMm) => gapInWords(gapMm, length.text))}
      </SelectField>
      <SelectField {...pick('exposure', 'Exposure')}>
        <option value="">all</option>
        {named(levels.exposures, settings.exposure)}
      </SelectField>
      <SelectField {...pick('age', 'Age')}>
        <option value="">all</option>
        {counted(levels.agesMonths, settings.age, ageInWords)}
      </SelectField>
      {settings.view === 'means' ? (
        <>
          <SelectField
            label="Torn wood"
            className="overview-treatment"
            value={settings.treatment}
            onChange={(event) => onSettings({ treatment: event.currentTarget.value })}
          >
            {meanTreatments.map(({ label }) => (
              <option key={label}>{label}</option>
            ))}
          </SelectField>
          <TornWoodNumbers
            woodFailure={treatmentOfLabel(settings.treatment).woodFailure}
            numbers={settings}
            onNumbers={onSettings}
          />
          <SelectField {...pick('reference', 'In percent of')}>
            <option value="">no reference</option>
            {named(levels.adhesives, settings.reference)}
          </SelectField>
        </>
      ) : null}
    </section>
  )
}
