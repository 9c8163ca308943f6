import type { ListName } from '#contract/settings/lists.ts'
import { usePreferences } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { Dialog } from '../../../widgets/dialogs/Dialog.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { withToggled } from './chosenColumns.ts'
import './columnsDialog.css'

/** A column as it is chosen. */
export type OfferedColumn = { key: string; title: string; atFirst: boolean }

/** Which columns a list shows; kept in the archive at once. The first one names the row and stays. */
export function ColumnsDialog({
  list,
  columns,
  onClose,
}: {
  list: ListName
  columns: readonly OfferedColumn[]
  onClose(): void
}) {
  const { columns: kept } = usePreferences()
  const set = useAction('preferences.set')
  const chosen = kept[list]
  const [first, ...others] = columns
  const isShown = ({ key, atFirst }: OfferedColumn) => chosen?.includes(key) ?? atFirst
  return (
    <Dialog title="Columns" onClose={onClose}>
      <p>{first?.title} always stands first. What you choose is kept in the archive.</p>
      <fieldset className="columns-choice">
        <legend className="visually-hidden">Columns shown</legend>
        {others.map((column) => (
          <label key={column.key}>
            <input
              type="checkbox"
              checked={isShown(column)}
              onChange={() => void set.run({ columns: { ...kept, [list]: withToggled(columns, chosen, column.key) } })}
            />
            {column.title}
          </label>
        ))}
      </fieldset>
      <Notice trouble={set.error} onDismiss={set.dismiss} />
      <div className="dialog-buttons">
        <button
          type="button"
          className="button"
          aria-disabled={chosen === undefined}
          onClick={() => {
            const { [list]: _gone, ...others } = kept
            void set.run({ columns: others })
          }}
        >
          As at first
        </button>
        <button type="button" className="button button-primary" onClick={onClose}>
          Done
        </button>
      </div>
    </Dialog>
  )
}
