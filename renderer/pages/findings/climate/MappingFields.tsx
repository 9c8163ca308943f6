import type { ClimateProposal } from '#contract/findings/climateAnswers.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import type { MappingTexts } from './mappingForm.ts'

const units = [
  { value: 'C', label: '°C' },
  { value: 'F', label: '°F' },
] as const

/** What the columns of a logger's file mean, as the headings suggest it and the person says it. */
export function MappingFields({
  found,
  texts,
  wrong,
  onTexts,
}: {
  found: ClimateProposal
  texts: MappingTexts
  wrong: Partial<MappingTexts>
  onTexts(change: Partial<MappingTexts>): void
}) {
  const column = (name: 'time' | 'timeOfDay' | 'temperature' | 'humidity', label: string, none: string) => (
    <SelectField
      label={label}
      value={texts[name]}
      error={wrong[name]}
      onChange={(event) => onTexts({ [name]: event.currentTarget.value })}
    >
      <option value="">{none}</option>
      {found.headings.map(({ column, heading, example }) => (
        <option key={column} value={column}>
          {heading === '' ? `column ${column}` : heading}
          {example === '' ? '' : ` (${example})`}
        </option>
      ))}
    </SelectField>
  )
  const own = Intl.DateTimeFormat().resolvedOptions().timeZone
  return (
    <fieldset className="climate-mapping">
      <legend>What the columns mean</legend>
      <div className="climate-picks">
        {column('time', 'Time', 'choose a column')}
        {column('timeOfDay', 'Time of day, where it has its own column', 'in the same column')}
        {column('temperature', 'Temperature', 'choose a column')}
        {column('humidity', 'Relative humidity', 'none')}
      </div>
      <div className="climate-picks">
        <Choice
          label="Temperatures in"
          options={units}
          value={texts.unit === 'C' || texts.unit === 'F' ? texts.unit : null}
          error={wrong.unit ?? null}
          onChange={(unit) => onTexts({ unit })}
        />
        <Field
          label="Time that its clock kept"
          required
          value={texts.timeZone}
          hint={`UTC, an offset as +01:00 for one that knows no summer time, or a zone; here: ${own}.`}
          error={wrong.timeZone}
          onChange={(event) => onTexts({ timeZone: event.currentTarget.value })}
        />
        <Field
          label="Days are written"
          value={texts.dateFormat}
          hint={
            found.dateFormats.length > 1
              ? `It could be ${found.dateFormats.join(' or ')}.`
              : 'As D.M.YYYY; empty for what can be but one day.'
          }
          error={wrong.dateFormat}
          onChange={(event) => onTexts({ dateFormat: event.currentTarget.value })}
        />
        <SelectField
          label="Decimals after"
          value={texts.decimal}
          onChange={(event) => onTexts({ decimal: event.currentTarget.value })}
        >
          <option value="">as the file shows</option>
          <option value=".">a point</option>
          <option value=",">a comma</option>
        </SelectField>
      </div>
    </fieldset>
  )
}
