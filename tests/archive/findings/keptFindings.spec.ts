import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { takeTouched } from '#archive/core/touched.ts'
import { keepFinding, keptFindings, newestKeptFinding, unlistFinding } from '#archive/findings/keptFindings.ts'
import { verify } from '#archive/verify/verify.ts'
import { findingsSettings } from '#contract/findings/keptFinding.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

let database: Database.Database
beforeEach(() => {
  database = archiveInMemory()
})

const later = '2031-06-02T09:30:00.000Z'
const block = {
  ...{ specimenId: 1, breakId: 1, number: 'E4-1', group: 'E4', ageMonths: 0, strengthMPa: 9 },
  ...{ woodFailurePercent: null, excludedBecause: null },
}
const fields = (name: string) => ({
  ...{ name, listed: true, settings: findingsSettings.parse({}), said: ['E4 holds.'] },
  ...{ dataSha256: 'a'.repeat(64), blocks: [block] },
})

describe('a kept finding', () => {
  it.each([
    ['is no JSON', "'['"],
    ['is empty', "'null'"],
    ['does not say what was asked', "json_remove(fields, '$.settings')"],
    ['has lost its blocks', "json_remove(fields, '$.blocks')"],
  ])('that %s is named, and hides no other', (_what, damaged) => {
    keepFinding(database, null, fields('Spring'), morning, 'bench', '')
    keepFinding(database, null, fields('Summer'), morning, 'bench', '')
    database.exec(`DROP TRIGGER kept_finding_revision_is_never_changed; PRAGMA ignore_check_constraints = ON;
      UPDATE kept_finding_revision SET fields = ${damaged} WHERE kept_finding_id = 1`)
    const { rows, unreadable } = keptFindings(database)
    expect(rows.map(({ name }) => name)).toEqual(['Summer'])
    expect(unreadable?.map(({ record }) => record)).toEqual(['version of a kept finding 1'])
  })
  it('is kept with every version, the newest on the list, and its place in the chain', () => {
    const { keptFindingId } = keepFinding(database, null, fields('Spring'), morning, 'bench', '')
    expect(takeTouched(database)).toEqual(expect.arrayContaining([`kept-finding ${keptFindingId}`, 'kept-findings']))
    keepFinding(database, keptFindingId, fields('Spring 2031'), later, 'Mara', 'more blocks')
    const { listed: _, ...head } = { ...fields('Spring 2031'), blocks: 1 }
    const version = { keptFindingId, revision: 2, recordedAt: later, by: 'Mara', reason: 'more blocks' }
    expect(keptFindings(database)).toEqual({ rows: [{ ...version, ...head }] })
    expect(newestKeptFinding(database, keptFindingId).fields.blocks).toEqual([block])
    expect(verify(database, () => {}).faults).toEqual([])
  })
  it('leaves the list by a version that says so, and nothing is removed', () => {
    const { keptFindingId } = keepFinding(database, null, fields('Spring'), morning, 'bench', '')
    unlistFinding(database, keptFindingId, later, 'Mara', 'was a trial')
    expect(keptFindings(database)).toEqual({ rows: [] })
    expect(newestKeptFinding(database, keptFindingId)).toMatchObject({ revision: 2, reason: 'was a trial' })
    expect(() => unlistFinding(database, 9, later, '', '')).toThrow(/no kept finding 9/)
  })
  it('has a name of its own among those on the list', () => {
    const { keptFindingId } = keepFinding(database, null, fields('Spring'), morning, 'bench', '')
    expect(() => keepFinding(database, null, fields('Spring'), later, 'bench', '')).toThrow(/“Spring” already/)
    expect(keepFinding(database, keptFindingId, fields('Spring'), later, 'bench', '').revision).toBe(2)
    unlistFinding(database, keptFindingId, later, '', '')
    expect(keepFinding(database, null, fields('Spring'), later, 'bench', '').keptFindingId).toBe(2)
  })
})
