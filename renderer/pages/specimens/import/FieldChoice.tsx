// Held by tests/browser/specimens/importPage.spec.ts.
import type { ImportField } from '#contract/specimens/importMapping.ts'
import { fieldTitle } from '#words/specimens/import/sheetWords.ts'

type Props = { label: string; className?: string; free: readonly ImportField[]; onField(field: ImportField): void }

/** Takes one field more of those that are free. */
export function FieldChoice({ label, className, free, onField }: Props) {
  return (
    <label className={className}>
      {label}{' '}
      <select value="" onChange={(event) => onField(event.currentTarget.value as ImportField)}>
        <option value="" disabled>
          choose a field
        </option>
        {free.map((field) => (
          <option key={field} value={field}>
            {fieldTitle(field)}
          </option>
        ))}
      </select>
    </label>
  )
}
