import { type ReactNode, useEffect, useRef, useState } from 'react'
import { Choice } from '../../widgets/Choice.tsx'
import { focusSection } from '../../widgets/focus/focusPlaces.ts'
import { Keys } from '../../widgets/Keys.tsx'
import { useSingleKeys } from '../routing/singleKeys.ts'
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

/** Heading, search and filter of a list. */
export function ListTools({
  title,
  view,
  onView,
  total,
  withWaiting,
  children,
}: {
  title: string
  view: ListView
  onView(change: Partial<ListView>): void
  total: string
  withWaiting: boolean
  children?: ReactNode
}) {
  const [text, setText] = useState(view.text ?? '')
  const search = useRef<HTMLInputElement>(null)
  const latest = useRef(onView)
  latest.current = onView
  useEffect(() => {
    if (text === (view.text ?? '')) return
    const timer = setTimeout(() => latest.current({ text }), searchAfterMs)
    return () => clearTimeout(timer)
  }, [text, view.text])
  useSingleKeys((key) => {
    if (key !== '/') return false
    search.current?.focus()
    search.current?.select()
    return true
  })
  return (
    <div className="list-tools">
      <div className="list-tools-title">
        <h1>{title}</h1>
        <p aria-live="polite">{total}</p>
      </div>
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
      <Choice
        label="Show"
        labelHidden
        options={statuses.filter(({ value }) => withWaiting || (value !== 'waiting' && value !== 'withdrawn'))}
        value={view.status ?? 'all'}
        onChange={(status) => onView({ status })}
      />
      {children}
    </div>
  )
}
