import { useState } from 'react'
import { type ListFilter, noFilter } from '#contract/listQuery.ts'
import type { CatalogueKind } from '#contract/programme/catalogue.ts'
import type { ListName } from '#contract/settings/lists.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { CatalogueField } from '../../catalogue/CatalogueField.tsx'
import { untouched, useTypedTexts } from '../../forms/useTypedTexts.ts'
import type { ListView } from '../usePagedList.ts'
import { type FilterTexts, filterUnits, readFilter, textsOfFilter } from './filterForm.ts'
import { SavedFilters } from './SavedFilters.tsx'
import './filterPanel.css'

type NamedKey = 'adhesive' | 'lot' | 'wood' | 'board' | 'jointType' | 'exposure' | 'place'

const named: readonly { key: NamedKey; kind: CatalogueKind; label: string }[] = [
  { key: 'adhesive', kind: 'adhesive', label: 'Adhesive' },
  { key: 'lot', kind: 'lot', label: 'Lot' },
  { key: 'wood', kind: 'wood', label: 'Wood' },
  { key: 'board', kind: 'board', label: 'Board' },
  { key: 'jointType', kind: 'joint-type', label: 'Joint type' },
  { key: 'exposure', kind: 'exposure', label: 'Exposure' },
  { key: 'place', kind: 'place', label: 'Place' },
]

type Parts = { list: ListName; view: ListView; onView(change: Partial<ListView>): void; onClose(): void }

/** What the blocks of a list must be made and kept of; and what was looked for before, under its name. */
export function FilterPanel(parts: Parts) {
  /** Another filter begins with fields of its own. */
  const [turn, setTurn] = useState(0)
  return (
    <section
      className="filter-panel"
      aria-label="Filter"
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return
        event.preventDefault()
        parts.onClose()
      }}
    >
      <FilterFields
        key={turn}
        {...parts}
        onView={(change) => {
          parts.onView(change)
          setTurn(turn + 1)
        }}
      />
    </section>
  )
}

function FilterFields({ list, view, onView, onClose }: Parts) {
  const quantities = useQuantities()
  const form = useTypedTexts(() => untouched(textsOfFilter(view.filter ?? {})), filterUnits)
  const studies = useAnswer('studies.list', {}).value?.rows ?? []
  const { shown, onTexts } = form
  const { filter, errors } = readFilter(form.readable, quantities)
  const bind = (key: keyof FilterTexts) => ({
    value: shown[key],
    error: errors[key] ?? null,
    onChange: (event: { currentTarget: { value: string } }) => onTexts({ ...shown, [key]: event.currentTarget.value }),
  })
  const owner: Partial<Record<NamedKey, string>> = { lot: shown.adhesive, board: shown.wood }

  function submit(): boolean {
    if (filter === null) return false
    onView({ filter })
    return true
  }
  const withFilter = (next: ListFilter) => onView({ filter: next })
  return (
    <>
      <Form onSubmit={submit} keepsItself className="filter-form">
        <div className="filter-fields">
          {named.map(({ key, kind, label }) => (
            <CatalogueField
              key={key}
              kind={kind}
              of={owner[key] ?? null}
              label={label}
              value={shown[key]}
              error={errors[key] ?? null}
              newWords="The catalogue has no such name."
              onValue={(value) => onTexts({ ...shown, [key]: value })}
            />
          ))}
          <SelectField label="Study" {...bind('studyId')}>
            <option value="">any, or none</option>
            {studies.map(({ studyId, fields }) => (
              <option key={studyId} value={studyId}>
                {fields.title}
              </option>
            ))}
          </SelectField>
          <Field label="Gap from" unit={quantities.length.unit} {...bind('gapLeastMm')} />
          <Field label="Gap to" unit={quantities.length.unit} {...bind('gapMostMm')} />
          <Field label="Age from" unit="months" {...bind('ageLeastMonths')} />
          <Field label="Age to" unit="months" {...bind('ageMostMonths')} />
        </div>
        <div className="filter-buttons">
          <button type="submit" className="button button-primary" aria-disabled={filter === null}>
            Show these
          </button>
          <button type="button" className="button" onClick={() => withFilter(noFilter)}>
            Show any
          </button>
          <button type="button" className="button button-quiet" onClick={onClose}>
            Close
          </button>
        </div>
      </Form>
      <SavedFilters list={list} view={view} filter={filter} onView={onView} />
    </>
  )
}
