import type { LedgerRow } from '#archive/core/ledger.ts'

// What is in force, told from the entries of the ledger alone, by the sentences of electron/archive/FORMAT.md. Plain on purpose:
// it goes through the whole history each time, and shares nothing with the program but the names in the entries.

type Content = Record<string, unknown> & { kind?: string; breakId: number; reason: string; reevaluationId?: number }
type Entry = Pick<LedgerRow, 'seq' | 'kind' | 'record_id'> & { content: Content }
type Result = {
  scale: { kind: string; nPerCount: number }
  tareOffset: number
  result: { outcome: string; peakN: number | null }
}

/** What a list must show of a break. */
export type StandingBreak = {
  breakId: number
  inForceId: number | null
  specimenId: number | null
  setAside: string | null
  outcome: string | null
  peakN: number | null
  overruled: string | null
}

/** The breaks that have ended, as the entries say that they stand. */
export function standingBreaks(rows: readonly LedgerRow[]): StandingBreak[] {
  const entries = rows.map((row): Entry => ({ ...row, content: JSON.parse(row.content) }))
  return entries
    .filter(({ kind }) => kind === 'break')
    .map(({ record_id: breakId, content }) => {
      const inForceId = inForce(entries, breakId)
      const made = entries.find(({ kind, record_id: id }) => kind === 'evaluation' && id === inForceId)?.content as
        | (Content & Result)
        | undefined
      const words = entries.filter(({ kind, content: word }) => kind === 'decision' && word.breakId === breakId)
      const newest = (...kinds: string[]) => words.findLast(({ content: word }) => kinds.includes(word.kind!))?.content
      const moved = newest('reassigned')
      const aside = newest('set-aside', 'taken-back')
      const peak = newest('peak-picked', 'premature-failure', 'peak-as-found')
      const sample = (peak?.sample ?? null) as { reading: number } | null
      const header = (content as unknown as { header: { specimenId: number | null } }).header
      return {
        breakId,
        inForceId,
        specimenId: moved === undefined ? header.specimenId : (moved.specimenId as number | null),
        setAside: aside?.kind === 'set-aside' ? aside.reason : null,
        outcome: sample === null ? (made?.result.outcome ?? null) : 'break',
        peakN: sample === null ? (made?.result.peakN ?? null) : loadN(made!, sample.reading),
        overruled: sample === null ? null : peak!.kind!,
      }
    })
}

/** The one that was put in force last: by its own entry, or by the newest decision on its re-evaluation, if that adopts it. */
function inForce(entries: readonly Entry[], breakId: number): number | null {
  const since = entries
    .filter(({ kind, content }) => kind === 'evaluation' && content.breakId === breakId)
    .flatMap(({ seq, record_id: evaluationId, content: { reevaluationId } }) => {
      if (reevaluationId === undefined) return [{ evaluationId, seq }]
      const word = entries.findLast(
        ({ kind, content }) => kind === 'reevaluation-decision' && content.reevaluationId === reevaluationId,
      )
      return word?.content.kind === 'adopted' ? [{ evaluationId, seq: word.seq }] : []
    })
  return since.toSorted((a, b) => b.seq - a.seq)[0]?.evaluationId ?? null
}

function loadN({ scale, tareOffset }: Result, reading: number): number | null {
  return scale.kind === 'none' ? null : reading * scale.nPerCount - tareOffset
}
