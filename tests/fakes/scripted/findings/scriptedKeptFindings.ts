import { conflict } from '#archive/core/recordTrouble.ts'
import type { Emit } from '#contract/events.ts'
import { findingsSettings, type KeptFinding } from '#contract/findings/keptFinding.ts'
import type { Handlers } from '#contract/procedures.ts'
import type { ObservedBreak } from '#domain/findings/observedBreak.ts'
import { changesSince, keptRows, resultsNow } from '#engine/findings/keptFindings.ts'

const recordedAt = '2031-04-02T09:30:00.000Z'

/** Findings kept under a name, as the program keeps them, in memory. */
export function scriptedKeptFindings(observed: readonly ObservedBreak[], emit: Emit) {
  const kept: KeptFinding[] = []
  const newest = (keptFindingId: number) => kept.findLast((one) => one.keptFindingId === keptFindingId)!
  const listed = () =>
    [...new Set(kept.map(({ keptFindingId }) => keptFindingId))].map(newest).filter(({ fields }) => fields.listed)
  const archive = {
    observations: () => [...observed],
    keptFindings: () => ({
      rows: listed()
        .reverse()
        .map(({ fields: { listed: _, ...fields }, ...version }) => ({
          ...version,
          ...fields,
          blocks: fields.blocks.length,
        })),
    }),
    keptFinding: newest,
  }
  function store(version: Omit<KeptFinding, 'revision' | 'recordedAt'>): KeptFinding {
    const revision = 1 + kept.filter(({ keptFindingId }) => keptFindingId === version.keptFindingId).length
    const stored = { ...version, revision, recordedAt }
    kept.push(stored)
    emit('records.changed', { topics: [`kept-finding ${version.keptFindingId}`, 'kept-findings'] })
    return stored
  }
  const handlers: Partial<Handlers> = {
    'findings.kept': async () => keptRows(archive),
    'findings.changes': async ({ keptFindingId }) => changesSince(archive, keptFindingId),
    'findings.keep': async ({ keptFindingId, by, reason, name, settings, said }) => {
      if (listed().some((one) => one.fields.name === name && one.keptFindingId !== keptFindingId))
        throw conflict(`There is a finding of the name “${name}” already.`, 'Give this one another name.')
      const fields = { name, listed: true, settings, said, ...resultsNow(archive)(settings) }
      const { keptFindingId: id, revision } = store({
        keptFindingId: keptFindingId ?? kept.length + 1,
        by,
        reason,
        fields,
      })
      return { keptFindingId: id, revision }
    },
    'findings.unlist': async ({ keptFindingId, by, reason }) => {
      const { fields } = newest(keptFindingId)
      store({ keptFindingId, by, reason, fields: { ...fields, listed: false } })
      return {}
    },
  }
  return {
    handlers,
    /** One that was kept before two results came, one went and one was assessed. */
    addStale(name: string): void {
      const settings = findingsSettings.parse({})
      const { blocks } = resultsNow(archive)(settings)
      const [first, second] = blocks
      const then = [
        { ...first!, specimenId: 9999, number: 'E4-9999' },
        { ...second!, woodFailurePercent: null },
      ]
      const fields = {
        ...{ name, listed: true, settings, said: ['resorcinol R2, bilge is the strongest of 8 groups.'] },
        ...{ dataSha256: '0'.repeat(64), blocks: [...then, ...blocks.slice(3)] },
      }
      store({ keptFindingId: kept.length + 1, by: 'Mara', reason: 'for the spring meeting', fields })
    },
  }
}
