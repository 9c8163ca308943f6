import { Choice } from '../../../widgets/Choice.tsx'
import { Field } from '../../../widgets/Field.tsx'
import { Switch } from '../../../widgets/Switch.tsx'
import type { LabelDraft } from './labelDraft.ts'

type Typed = 'columns' | 'rows' | 'widthMm' | 'heightMm' | 'leftMm' | 'topMm' | 'gapAcrossMm' | 'gapDownMm'

const inTheMiddle = 'Without one, in the middle.'
const ofSize: readonly { key: Typed; label: string; hint?: string }[] = [
  { key: 'widthMm', label: 'Width' },
  { key: 'heightMm', label: 'Height' },
  { key: 'gapAcrossMm', label: 'Gap across' },
  { key: 'gapDownMm', label: 'Gap down' },
  { key: 'leftMm', label: 'Left margin', hint: inTheMiddle },
  { key: 'topMm', label: 'Top margin', hint: inTheMiddle },
]

/** The paper and where the labels lie on it. */
export function SheetFields({ draft, onChange }: { draft: LabelDraft; onChange(next: Partial<LabelDraft>): void }) {
  const typed = (key: Typed, label: string, unit?: string, hint?: string) => (
    <Field
      key={key}
      label={label}
      unit={unit}
      hint={hint}
      value={draft[key]}
      onChange={(event) => onChange({ [key]: event.currentTarget.value })}
    />
  )
  return (
    <fieldset className="labels-fieldset">
      <legend>Sheet</legend>
      <Choice
        label="Paper"
        options={[
          { value: 'A4', label: 'A4' },
          { value: 'Letter', label: 'Letter' },
        ]}
        value={draft.page}
        onChange={(page) => onChange({ page })}
      />
      <Choice
        label="Labels by"
        options={[
          { value: 'grid', label: 'Columns and rows' },
          { value: 'size', label: 'Own size' },
        ]}
        value={draft.by}
        onChange={(by) => onChange({ by })}
      />
      <div className="labels-pair">
        {draft.by === 'grid' ? (
          <>
            {typed('columns', 'Columns')}
            {typed('rows', 'Rows')}
          </>
        ) : (
          ofSize.map(({ key, label, hint }) => typed(key, label, 'mm', hint))
        )}
      </div>
      <Switch label="Lines to cut along" on={draft.outlined} onChange={(outlined) => onChange({ outlined })} />
    </fieldset>
  )
}
