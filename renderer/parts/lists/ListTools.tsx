import { type ReactNode, useEffect, useRef, useState } from 'react'
import type { ListName } from '#contract/settings/lists.ts'
import { Choice } from '../../widgets/Choice.tsx'
import { focusSection } from '../../widgets/focus/focusPlaces.ts'
import { Keys } from '../../widgets/Keys.tsx'
import { useSingleKeys } from '../routing/singleKeys.ts'
import { ColumnsDialog, type OfferedColumn } from './columns/ColumnsDialog.tsx'
import { FilterPanel } from './filter/FilterPanel.tsx'
import { asksAbout } from './filter/filterForm.ts'
import type { ListView } from './usePagedList.ts'
import './listTools.css'
import './selection.css'

const statuses = [
  { value: 'all', label: 'All' },
  { value: 'waiting', label: 'Waiting' },
  { value: 'broken', label: 'Broken' },
  { value: 'set-aside', label: 'Set aside' },
  { value: 'withdrawn', label: 'Withdrawn' },
] as const

/** A search begins this long after the last letter, ms. */
const searchAfterMs = 180

type Parts = {
  list: ListName
  title: string
  view: ListView
  onView(change: Partial<ListView>): void
}

/** Heading, search, filter and columns of a list. `children`: what else can be done from here. */
export function ListTools({
  total,
  withWaiting,
  columns,
  children,
  ...parts
}: Parts & { total: string; withWaiting: boolean; columns: readonly OfferedColumn[]; children?: ReactNode }) {
  const { list, title, view, onView } = parts
  const [open, setOpen] = useState<'filter' | 'columns' | null>(null)
  const filterButton = useRef<HTMLButtonElement>(null)
  const asked = asksAbout(view.filter ?? {})
  return (
    <div className="list-head">
      <div className="list-tools">
        <div className="list-tools-title">
          <h1>{title}</h1>
          <p aria-live="polite">{total}</p>
        </div>
        {children}
      </div>
      <div className="list-tools">
        <SearchField {...parts} />
        <Choice
          label="Show"
          labelHidden
          options={statuses.filter(({ value }) => withWaiting || (value !== 'waiting' && value !== 'withdrawn'))}
          value={view.status ?? 'all'}
          onChange={(status) => onView({ status })}
        />
        <button
          ref={filterButton}
          type="button"
          className="button"
          aria-expanded={open === 'filter'}
          data-asked={asked > 0 ? '' : undefined}
          onClick={() => setOpen(open === 'filter' ? null : 'filter')}
        >
          {asked === 0 ? 'Filter' : `Filter (${asked})`}
        </button>
        <button type="button" className="button" onClick={() => setOpen('columns')}>
          Columns
        </button>
      </div>
      {open === 'filter' ? (
        <FilterPanel
          list={list}
          view={view}
          onView={onView}
          onClose={() => {
            setOpen(null)
            filterButton.current?.focus()
          }}
        />
      ) : null}
      {open === 'columns' ? <ColumnsDialog list={list} columns={columns} onClose={() => setOpen(null)} /> : null}
    </div>
  )
}

function SearchField({ title, view, onView }: Parts) {
  const given = view.text ?? ''
  const [text, setText] = useState(given)
  const search = useRef<HTMLInputElement>(null)
  const latest = useRef(onView)
  latest.current = onView
  /** What this field asked for last: another text in the list came from elsewhere, and stands here too. */
  const asked = useRef(given)
  useEffect(() => {
    if (given !== asked.current) setText(given)
    asked.current = given
  }, [given])
  useEffect(() => {
    if (text === given) return
    const timer = setTimeout(() => {
      asked.current = text
      latest.current({ text })
    }, searchAfterMs)
    return () => clearTimeout(timer)
  }, [text, given])
  useSingleKeys((key) => {
    if (key !== '/') return false
    search.current?.focus()
    search.current?.select()
    return true
  })
  return (
    <label className="search">
      <span className="visually-hidden">Search {title.toLowerCase()}</span>
      <input
        ref={search}
        type="search"
        maxLength={1000}
        value={text}
        placeholder="Search all that is shown"
        onChange={(event) => setText(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Escape' && text === '') focusSection(event.currentTarget)
          if (event.key !== 'ArrowDown') return
          event.preventDefault()
          document.querySelector<HTMLElement>('main tr[data-index]')?.focus()
        }}
      />
      <Keys keys="/" />
    </label>
  )
}
