import type { FilterAnswer } from '../../../../parts/curve/curveLook.ts'
import { Field, SelectField } from '../../../../widgets/Field.tsx'
import { Switch } from '../../../../widgets/Switch.tsx'
import { type FilterDraft, type FilterKind, filterNames } from './curveFilterForm.ts'
import './curveTools.css'

export type ToolsDraft = { filter: FilterDraft; slope: boolean; slopeMs: string; seatedLine: boolean }

/** What is shown beside the raw curve, all of it for looking only. */
export function CurveTools({
  draft,
  onDraft,
  filterError,
  slopeError,
  filterAnswer,
  hasToe,
}: {
  draft: ToolsDraft
  onDraft(draft: ToolsDraft): void
  filterError: string | null
  slopeError: string | null
  filterAnswer: FilterAnswer
  hasToe: boolean
}) {
  const trouble = filterAnswer.trouble
  return (
    <div className="curve-views">
      <FilterFields
        filter={draft.filter}
        error={filterError}
        isWrong={filterAnswer.trouble !== null}
        onFilter={(filter) => onDraft({ ...draft, filter })}
      />
      <div className="curve-view">
        <Switch
          label="Slope"
          on={draft.slope}
          onWord="shown"
          offWord="hidden"
          onChange={(slope) => onDraft({ ...draft, slope })}
        />
        {draft.slope ? (
          <Field
            label="Slope over"
            unit="ms"
            value={draft.slopeMs}
            onChange={(event) => onDraft({ ...draft, slopeMs: event.currentTarget.value })}
            error={slopeError}
          />
        ) : null}
      </div>
      <div className="curve-view">
        {hasToe ? (
          <Switch
            label="Line through the straight part"
            on={draft.seatedLine}
            onWord="shown"
            offWord="hidden"
            onChange={(seatedLine) => onDraft({ ...draft, seatedLine })}
          />
        ) : (
          <p className="quiet">No straight part of the curve is known.</p>
        )}
      </div>
      <div className="curve-legend" aria-live="polite">
        {trouble !== null ? (
          <p className="field-error">
            {trouble.message} {trouble.hint}
          </p>
        ) : filterAnswer.pending ? (
          <p>Filtering …</p>
        ) : filterAnswer.name === null ? null : (
          <p>
            <LineSample dashed={false} /> raw samples <LineSample dashed /> {filterAnswer.name}: for looking only, the
            peak is from unfiltered samples
          </p>
        )}
        {draft.seatedLine && hasToe ? (
          <p>Toe compensation is offered for reading the curve; it is never applied to the peak.</p>
        ) : null}
      </div>
    </div>
  )
}

/** Which filter, and its cutoff or window. */
function FilterFields({
  filter,
  error,
  isWrong,
  onFilter,
}: {
  filter: FilterDraft
  error: string | null
  /** The filter cannot be had. */
  isWrong: boolean
  onFilter(filter: FilterDraft): void
}) {
  const setFilter = (change: Partial<FilterDraft>) => onFilter({ ...filter, ...change })
  return (
    <div className="curve-view" data-wrong={isWrong ? '' : undefined}>
      <SelectField
        label="Filtered curve beside it"
        value={filter.kind}
        onChange={(event) => setFilter({ kind: event.currentTarget.value as FilterKind })}
      >
        {filterNames.map(({ kind, name }) => (
          <option key={kind} value={kind}>
            {name}
          </option>
        ))}
      </SelectField>
      {filter.kind === 'butterworth' ? (
        <Field
          label="−3 dB at"
          unit="Hz"
          value={filter.cutoffHz}
          onChange={(event) => setFilter({ cutoffHz: event.currentTarget.value })}
          error={error}
        />
      ) : null}
      {filter.kind === 'moving-average' ? (
        <Field
          label="Window"
          unit="ms"
          value={filter.windowMs}
          onChange={(event) => setFilter({ windowMs: event.currentTarget.value })}
          error={error}
        />
      ) : null}
    </div>
  )
}

function LineSample({ dashed }: { dashed: boolean }) {
  return (
    <svg className="line-sample" data-dashed={dashed ? '' : undefined} viewBox="0 0 30 8" aria-hidden="true">
      <path d="M1 4H29" />
    </svg>
  )
}
