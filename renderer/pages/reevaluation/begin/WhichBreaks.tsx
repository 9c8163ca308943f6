import { useEffect, useState } from 'react'
import type { ListQuery } from '#contract/listQuery.ts'
import { countOf } from '#words/units/counts.ts'
import { hashOf } from '../../../routes/route.ts'
import { Choice } from '../../../widgets/Choice.tsx'

/** How the breaks are chosen. one: the break that the person came from. */
export type BreaksChoice = 'one' | 'selected' | 'search'
export type BreaksSearch = { text: string; status: ListQuery['status'] }

const statuses = [
  { value: 'all', label: 'All' },
  { value: 'broken', label: 'Broken' },
  { value: 'set-aside', label: 'Set aside' },
] as const

/** A search begins this long after the last letter, ms. */
const searchAfterMs = 180

/** Chooses which breaks: the one that the person came from, those selected in the list, or all that fit a search. */
export function WhichBreaks({
  oneWords,
  selected,
  choice,
  onChoice,
  search,
  onSearch,
  found,
  error,
}: {
  /** Names the one break; null: the person came from nowhere. */
  oneWords: string | null
  selected: number
  choice: BreaksChoice
  onChoice(choice: BreaksChoice): void
  search: BreaksSearch
  onSearch(search: BreaksSearch): void
  /** How many breaks fit the search; null: not known yet. */
  found: number | null
  error: string | null
}) {
  const radio = (value: BreaksChoice) => ({
    type: 'radio' as const,
    name: 'breaks',
    checked: choice === value,
    onChange: () => onChoice(value),
    'aria-invalid': error === null ? undefined : true,
    'aria-describedby': error === null ? undefined : 'breaks-error',
  })
  return (
    <div data-wrong={error === null ? undefined : ''}>
      <fieldset className="pick-list" aria-describedby={error === null ? undefined : 'breaks-error'}>
        <legend className="new-reevaluation-head">Which breaks</legend>
        {oneWords === null ? null : (
          <label>
            <input {...radio('one')} />
            <strong>{oneWords}</strong>
          </label>
        )}
        <label data-disabled={selected === 0 ? '' : undefined}>
          <input {...radio('selected')} disabled={selected === 0} />
          <strong>
            {selected === 0 ? 'Those selected in the list' : `${countOf(selected, 'break')} selected in the list`}
          </strong>{' '}
          <span className="quiet">
            {selected === 0 ? 'none is selected; ' : ''}
            <a href={hashOf({ page: 'breaks' })}>{selected === 0 ? 'select some' : 'change'}</a>
          </span>
        </label>
        <label>
          <input {...radio('search')} />
          <strong>All found by a search</strong>{' '}
          <span className="quiet" aria-live="polite">
            {choice === 'search' && found !== null ? countOf(found, 'break') : ''}
          </span>
        </label>
      </fieldset>
      {choice === 'search' ? <SearchFields search={search} onSearch={onSearch} /> : null}
      {error === null ? null : (
        <p id="breaks-error" className="field-error">
          {error}
        </p>
      )}
    </div>
  )
}

function SearchFields({ search, onSearch }: { search: BreaksSearch; onSearch(search: BreaksSearch): void }) {
  const [text, setText] = useState(search.text)
  useEffect(() => {
    if (text === search.text) return
    const timer = setTimeout(() => onSearch({ ...search, text }), searchAfterMs)
    return () => clearTimeout(timer)
  }, [text, search, onSearch])
  return (
    <div className="which-search">
      <label className="search">
        <span className="visually-hidden">Search breaks</span>
        <input
          type="search"
          value={text}
          placeholder="Search all that is shown; empty: every break"
          onChange={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <Choice
        label="Show"
        labelHidden
        options={statuses}
        value={search.status === 'waiting' ? 'all' : search.status}
        onChange={(status) => onSearch({ ...search, status })}
      />
    </div>
  )
}
