import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { labelledBlocks } from '#archive/programme/labels.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { pulledStudy } from '../pulledStudy.ts'
import { archiveInMemory, morning, specimenFields } from '../storedStudy.ts'

let database: Database.Database
beforeEach(() => {
  database = archiveInMemory()
})

const loft = { adhesive: 'casein C1', jointType: 'long grain to long grain', gapMm: 0, exposure: 'loft' }

describe('labels', () => {
  it('of a study are those of its blocks, glued or not, spares among them', () => {
    const { studyId } = pulledStudy(database)
    const blocks = labelledBlocks(database, { kind: 'study', studyId })
    expect(blocks).toHaveLength(11)
    expect(blocks[0]).toEqual({ number: labelOf(2), group: { ...loft, ageMonths: 0 } })
    expect(blocks.at(-1)!.group).toEqual({ ...loft, ageMonths: null })
  })

  it('of a range are all numbers that make a label, with what is known of them', () => {
    pulledStudy(database)
    const blocks = labelledBlocks(database, { kind: 'numbers', first: 1, last: 24 })
    expect(blocks.map(({ number }) => number)).toEqual(
      Array.from({ length: 24 }, (_, i) => labelOf(i + 1)).filter((label) => label !== null),
    )
    expect(blocks[0]!.number).toBe(labelOf(2))
    expect(blocks[0]!.group).toEqual({ ...loft, ageMonths: 0 })
    expect(blocks.at(-1)!.group).toBeNull()
  })

  it('of specimens have the number that people wrote', () => {
    const { specimenIds } = pulledStudy(database)
    const own = addSpecimen(database, specimenFields('C1-LL-03', { bondLineGapMm: null }), morning, '')
    expect(labelledBlocks(database, { kind: 'specimens', specimenIds: [own.specimenId, specimenIds[6]!] })).toEqual([
      { number: 'C1-LL-03', group: { ...loft, gapMm: null, ageMonths: null } },
      { number: expect.stringMatching(/^\d+$/), group: { ...loft, ageMonths: 12 } },
    ])
  })

  it('of what is not there are refused', () => {
    expect(() => labelledBlocks(database, { kind: 'study', studyId: 5 })).toThrow(/no study 5/)
    expect(() => labelledBlocks(database, { kind: 'specimens', specimenIds: [5] })).toThrow(/no specimen 5/)
  })
})
