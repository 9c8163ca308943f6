import { Trouble } from '#contract/errors.ts'
import type { Handlers } from '#contract/procedures.ts'
import { type Study, type StudyFields, studyFields } from '#contract/programme/study.ts'
import type { BlockCounts, CellCounts, StudyRecord } from '#contract/programme/studyRecord.ts'
import { allocateBlocks, nothingAllocated } from '#domain/programme/study/allocation.ts'
import { cellKey } from '#domain/programme/study/cells.ts'
import type { ScriptedEngine } from './scriptedEngine.ts'
import { at } from './scriptedRecords.ts'

export type ScriptedStudies = {
  handlers: Partial<Handlers>
  /** Plans a study of the school; `glued`: its blocks are allocated, and those up to an age are glued and broken. */
  add(fields?: Partial<StudyFields>, glued?: { toMonths: number; lost: number }): Study
}

/** The study that the school plans: six adhesives, two exposures, ages over ten years. */
export const schoolStudy: StudyFields = studyFields.parse({
  title: 'Which adhesive lasts in loft and bilge?',
  question: 'Does any adhesive that the school teaches lose a fifth of its strength within ten years on a damp shelf?',
  adhesives: ['casein C1', 'epoxy E4', 'urea-formaldehyde F6', 'resorcinol R2', 'one-part polyurethane U3', 'PVA V5'],
  jointTypes: ['beech lap'],
  gapsMm: [0],
  exposures: ['loft', 'bilge'],
  agesMonths: [0, 6, 12, 18, 24, 30, 36, 48, 60, 72, 96, 120],
  blocksPerCell: 12,
  sparesPerSeries: 4,
  referenceAdhesive: 'epoxy E4',
  overlapLengthMm: 30,
  overlapWidthMm: 20,
  pieceLengthMm: 80,
  pieceWidthMm: 20,
  pieceThicknessMm: 10,
  adhesiveGPerBlock: 0.4,
  wood: 'beech',
  boards: Array.from({ length: 8 }, (_, index) => ({ name: `plank ${index + 1}`, blocks: 230 })),
  cvPercent: 12,
  seed: 1947,
})

const none: BlockCounts = { allocated: 0, glued: 0, waiting: 0, broken: 0, lost: 0 }

/** Studies of a scripted host. */
export function createScriptedStudies(emit: ScriptedEngine['emit']): ScriptedStudies {
  const records: StudyRecord[] = []
  const recordOf = (studyId: number): StudyRecord => {
    const record = records.find(({ current }) => current.studyId === studyId)
    if (record === undefined) throw new Trouble('not-found', `There is no study ${studyId}.`, 'Go back to the list.')
    return record
  }
  const told = (studyId: number) => emit('records.changed', { topics: [`study ${studyId}`, 'studies'] })

  function allocate(record: StudyRecord, glued: { toMonths: number; lost: number } | null): void {
    const cells = new Map<string, CellCounts>()
    for (const { board: _board, breakingOrder: _order, ...cell } of allocateBlocks(
      record.current.fields,
      nothingAllocated,
    )) {
      const known = cells.get(cellKey(cell)) ?? { ...cell, ...none }
      cells.set(cellKey(cell), known)
      known.allocated += 1
      if (glued === null) continue
      known.glued += 1
      const isBroken = cell.ageMonths !== null && cell.ageMonths <= glued.toMonths
      known[isBroken ? 'broken' : known.lost < glued.lost && cell.exposure === 'bilge' ? 'lost' : 'waiting'] += 1
    }
    record.cells = [...cells.values()]
    for (const key of Object.keys(none) as (keyof BlockCounts)[])
      record.counts[key] = record.cells.reduce((sum, cell) => sum + cell[key], 0)
    record.runnings = { first: 1, last: record.counts.allocated }
    if (glued === null) return
    record.glueUps = [{ glueUpId: 1, gluedOn: at(0).slice(0, 10), blocks: record.counts.glued }]
    record.sessions = [{ breakingSessionId: 1, title: 'Blocks at once', startedAt: at(30) }]
  }

  function keep(fields: StudyFields, by: string): Study {
    const current = { studyId: records.length + 1, revision: 1, recordedAt: at(0), by, reason: '', fields }
    const nothing = { cells: [], boards: [], runnings: null, glueUps: [], sessions: [] }
    records.push({ current, revisions: [current], counts: { ...none }, ...nothing })
    return current
  }

  return {
    add(fields = {}, glued) {
      const study = keep({ ...schoolStudy, ...fields }, 'Mara')
      if (glued !== undefined) allocate(recordOf(study.studyId), glued)
      return study
    },
    handlers: {
      'studies.list': async () => ({ rows: records.map(({ current, counts }) => ({ ...current, counts })).reverse() }),
      'studies.get': async ({ studyId }) => structuredClone(recordOf(studyId)),
      'studies.add': async ({ fields, by }) => {
        const study = keep(fields, by)
        told(study.studyId)
        return study
      },
      'studies.correct': async ({ studyId, fields, by, reason }) => {
        const record = recordOf(studyId)
        const revision = record.revisions.length + 1
        record.current = { studyId, revision, recordedAt: at(90), by, reason, fields }
        record.revisions.push(record.current)
        told(studyId)
        return record.current
      },
      'studies.allocate': async ({ studyId }) => {
        const record = recordOf(studyId)
        allocate(record, null)
        told(studyId)
        return { blocks: record.counts.allocated, first: 1, last: record.counts.allocated }
      },
      'studies.variation': async () => ({ cvPercent: 10.4, groups: 6, blocks: 61 }),
    },
  }
}
