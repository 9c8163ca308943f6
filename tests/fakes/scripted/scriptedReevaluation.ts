import type { BreakRecord } from '#contract/breaks/break.ts'
import { Trouble } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import type { Handlers } from '#contract/procedures.ts'
import type { ChangesPage, ResultChange } from '#contract/reevaluation/changes.ts'
import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { topicsOf } from '#contract/topics.ts'

export type ScriptedReevaluation = {
  handlers: Partial<Handlers>
  reevaluations: ReevaluationSummary[]
  /** Changes of any re-evaluation, as the table shows them. */
  changes: ResultChange[]
  /** Adds one that was begun after those before it, complete and without a decision unless `change` says otherwise. */
  add(change?: Partial<ReevaluationSummary>): ReevaluationSummary
  /** Says that so many breaks of the one that runs are done. */
  advance(done: number): void
  /** Ends the one that runs, with so many results. */
  end(ending: 'complete' | 'cancelled' | 'cut-short', evaluated: number): void
}

const begunAt = Date.UTC(2026, 5, 2, 9, 15, 0)
const at = (hours: number) => new Date(begunAt + hours * 3_600_000).toISOString()

/** Re-evaluations kept in memory: they go on only as the test says. */
export function createScriptedReevaluation(parts: {
  emit: Emit
  breaks(): readonly BreakRecord[]
}): ScriptedReevaluation {
  const reevaluations: ReevaluationSummary[] = []
  const changes: ResultChange[] = []

  function of(reevaluationId: number): ReevaluationSummary {
    const found = reevaluations.find((one) => one.reevaluationId === reevaluationId)
    if (found === undefined)
      throw new Trouble('not-found', `There is no re-evaluation ${reevaluationId}.`, 'Go back to the list.')
    return found
  }
  function changed(reevaluationId: number): ReevaluationSummary {
    parts.emit('records.changed', { topics: topicsOf('reevaluation', [reevaluationId]) })
    return of(reevaluationId)
  }
  function add(change: Partial<ReevaluationSummary> = {}): ReevaluationSummary {
    const reevaluationId = reevaluations.length + 1
    const summary: ReevaluationSummary = {
      reevaluationId,
      begunAt: at(reevaluationId),
      by: 'bench 1',
      method: 'break-detection 2',
      calibrationId: null,
      settings: {},
      breaks: 48,
      evaluated: 48,
      end: { reevaluationId, endedAt: at(reevaluationId + 0.1), ending: 'complete', problems: [] },
      decisions: [],
      ...change,
    }
    reevaluations.push(summary)
    return summary
  }

  return {
    reevaluations,
    changes,
    add,
    advance(done) {
      const running = reevaluations.find(({ end }) => end === null)!
      parts.emit('task.progress', { task: 'reevaluation', done, total: running.breaks })
    },
    end(ending, evaluated) {
      const running = reevaluations.find(({ end }) => end === null)!
      const { reevaluationId } = running
      const end = { reevaluationId, endedAt: at(reevaluationId + 0.1), ending, problems: [] }
      Object.assign(running, { evaluated, end })
      changed(reevaluationId)
    },
    handlers: {
      'breaks.ids': async ({ text }) =>
        parts
          .breaks()
          .filter(({ summary }) => `${summary.number} ${summary.adhesive}`.toLowerCase().includes(text.toLowerCase()))
          .map(({ summary }) => summary.breakId),
      'reevaluations.begin': async ({ breakIds, calibrationId, settings, by }) => {
        if (reevaluations.some(({ end }) => end === null))
          throw new Trouble(
            'conflict',
            'Breaks are being evaluated again already.',
            'Wait until that has ended, or cancel it.',
          )
        const { reevaluationId } = add({
          calibrationId,
          settings,
          by,
          breaks: breakIds.length,
          evaluated: 0,
          end: null,
        })
        return changed(reevaluationId)
      },
      'reevaluations.list': async () => ({ rows: reevaluations.toReversed() }),
      'reevaluations.get': async ({ reevaluationId }) => of(reevaluationId),
      'reevaluations.changes': async ({ only, sort, descending, offset, limit }): Promise<ChangesPage> => {
        const rows = changes.filter(({ changed: what }) =>
          only === 'all' ? true : only === 'changed' ? Object.values(what).includes(true) : what[only],
        )
        const key = (row: ResultChange) => (sort === 'number' ? row.breakId : Math.abs(row.differencePercent ?? 0))
        const ordered = rows.toSorted((a, b) => (descending ? key(b) - key(a) : key(a) - key(b)))
        const count = (what: keyof ResultChange['changed']) => changes.filter((row) => row.changed[what]).length
        const percents = changes.filter((row) => row.changed.peak).map((row) => row.differencePercent ?? 0)
        return {
          total: rows.length,
          rows: ordered.slice(offset, offset + limit),
          figures: {
            results: changes.length,
            outcomes: count('outcome'),
            peaks: count('peak'),
            flags: count('flags'),
            events: count('events'),
            overruled: changes.filter(({ overruled }) => overruled !== null).length,
            setAside: changes.filter(({ setAside }) => setAside !== null).length,
            meanDifferencePercent:
              percents.length === 0 ? null : percents.reduce((sum, one) => sum + one, 0) / percents.length,
            largestDifferencePercent: percents.toSorted((a, b) => Math.abs(b) - Math.abs(a))[0] ?? null,
          },
        }
      },
      'reevaluations.decide': async ({ reevaluationId, kind, by, reason }) => {
        const one = of(reevaluationId)
        const reevaluationDecisionId = 1 + reevaluations.reduce((sum, { decisions }) => sum + decisions.length, 0)
        const recordedAt = at(reevaluationId + 1 + one.decisions.length)
        one.decisions = [...one.decisions, { reevaluationDecisionId, reevaluationId, recordedAt, by, reason, kind }]
        return changed(reevaluationId)
      },
    },
  }
}

const adhesives = ['casein C1', 'resorcinol R2', 'one-part polyurethane U3', 'epoxy E4', 'cross-linking PVA V5']

/** So many results before and now, in every way that a result can change. */
export function scriptedChanges(count: number): ResultChange[] {
  return Array.from({ length: count }, (_, index) => scriptedChange(index))
}

function scriptedChange(index: number): ResultChange {
  const adhesive = adhesives[Math.floor(index / 12) % adhesives.length]!
  const peakN = 3900 + ((index * 733) % 2300)
  const released = index % 17 === 8
  const moved = index % 3 === 0 || released
  const nowN = released ? peakN * 0.62 : moved ? peakN * (1 + ((index % 7) - 3) / 900) : peakN
  const flagged = index % 5 === 1
  const seen = index % 4 === 2
  const side = (evaluationId: number, method: string) => ({
    evaluationId,
    method,
    outcome: 'break' as const,
    peakN,
    flags: index % 9 === 4 ? (['sampling-too-slow'] as const).slice() : [],
    events: ['seating', 'final-drop'],
  })
  const before = { ...side(index + 1, 'break-detection 1'), ...(released ? { outcome: 'unloading' as const } : {}) }
  const now = {
    ...side(index + 1001, 'break-detection 2'),
    peakN: nowN,
    ...(flagged ? { flags: ['sampling-too-slow' as const, 'above-verified-range' as const] } : {}),
    ...(seen ? { events: ['seating', index % 8 === 2 ? 'stick-slip 4' : 'pop-in', 'plateau', 'final-drop'] } : {}),
  }
  const differenceN = nowN - peakN
  return {
    breakId: index + 1,
    number: `${adhesive.split(' ').at(-1)}-LL-${String((index % 12) + 1).padStart(2, '0')}`,
    adhesive,
    simulated: true,
    overruled:
      index % 45 === 8
        ? {
            ...{ kind: 'peak-picked', by: 'bench 1', reason: 'the joint cracked there, seen on the face' },
            ...{ recordedAt: at(0), timeS: 8.6, foundPeakN: peakN },
          }
        : null,
    ...(index % 34 === 25
      ? { setAside: 'the fixture was touched', setAsideCause: 'fixture-touched' }
      : { setAside: null, setAsideCause: null }),
    before,
    now,
    differenceN,
    differencePercent: (100 * differenceN) / peakN,
    changed: { outcome: released, peak: differenceN !== 0, flags: flagged, events: seen },
  }
}
