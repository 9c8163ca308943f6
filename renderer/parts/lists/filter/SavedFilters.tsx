import { useState } from 'react'
import type { ListFilter } from '#contract/listQuery.ts'
import type { ListName, SavedFilter } from '#contract/settings/lists.ts'
import { usePreferences } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import type { ListView } from '../usePagedList.ts'
import { isSameFilter, withFilterNamed, withoutFilter } from './savedFilters.ts'

/** Filters that were kept under a name in the archive: taken again, kept, and let go. */
export function SavedFilters({
  list,
  view,
  filter,
  onView,
}: {
  list: ListName
  view: ListView
  /** null: something that is typed cannot be read. */
  filter: ListFilter | null
  onView(change: Partial<ListView>): void
}) {
  const { savedFilters } = usePreferences()
  const set = useAction('preferences.set')
  const [name, setName] = useState('')
  const own = savedFilters.filter((one) => one.list === list)
  const shown = own.find((one) => isSameFilter(one, view)) ?? null
  const wrong = filter === null ? 'Mend the filter first.' : null

  async function keep(): Promise<boolean> {
    if (filter === null || name.trim() === '') return false
    const next: SavedFilter = { name: name.trim(), list, text: view.text ?? '', status: view.status ?? 'all', filter }
    const isKept = (await set.run({ savedFilters: withFilterNamed(savedFilters, next) })) !== null
    if (!isKept) return false
    setName('')
    onView({ filter })
    return true
  }
  return (
    <Form onSubmit={keep} keepsItself focusFirst={false} className="saved-filters">
      <SelectField
        label="Kept filters"
        value={shown?.name ?? ''}
        onChange={(event) => {
          const chosen = own.find((one) => one.name === event.currentTarget.value)
          if (chosen !== undefined) onView({ text: chosen.text, status: chosen.status, filter: chosen.filter })
        }}
      >
        <option value="">{own.length === 0 ? 'none yet' : 'choose one'}</option>
        {own.map((one) => (
          <option key={one.name}>{one.name}</option>
        ))}
      </SelectField>
      <button
        type="button"
        className="button button-quiet"
        aria-disabled={shown === null}
        onClick={() => shown !== null && void set.run({ savedFilters: withoutFilter(savedFilters, shown) })}
      >
        Remove
      </button>
      <Field
        label="Keep this one as"
        value={name}
        maxLength={200}
        error={name === '' ? null : wrong}
        onChange={(event) => setName(event.currentTarget.value)}
      />
      <button type="submit" className="button" aria-disabled={name.trim() === '' || set.pending}>
        Keep
      </button>
      <Notice trouble={set.error} onDismiss={set.dismiss} />
    </Form>
  )
}
