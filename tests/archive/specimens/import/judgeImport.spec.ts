import { describe, expect, it } from 'vitest'
import { judgeImport } from '#archive/specimens/import/judgeImport.ts'
import { specimen } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens, correctSpecimen } from '#archive/specimens/specimens.ts'
import { decideImport, decideTypedResult } from '#archive/specimens/typedResults.ts'
import type { ImportedFile, ReadBlock } from '#contract/specimens/importedResult.ts'
import { file, importBlocks, readBlock, savedAgain } from '../../storedImport.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../../storedStudy.ts'

const fates = (database: ReturnType<typeof archiveInMemory>, blocks: ReadBlock[], from: ImportedFile = file) =>
  judgeImport(database, from, blocks).map(({ fate, cause }) => [fate, cause?.kind ?? null])

const word = { recordedAt: '2031-05-03T09:00:00.000Z', by: 'Ada Thole', reason: 'read in the wrong unit' }
const setAside = (database: ReturnType<typeof archiveInMemory>, importRunId = 1) =>
  decideImport(database, importRunId, { ...word, kind: 'set-aside', cause: 'wrong-block' })

describe('a block with a number', () => {
  const stored = () => {
    const database = archiveInMemory()
    importBlocks(database, [readBlock(2, { number: 'A-1', woodFailurePercent: 30, overlapLengthMm: 30 })])
    return database
  }

  it('is there already with the same values, from whatever file and row, and however its number is written', () => {
    const blocks = [readBlock(7, { number: 'a-1', woodFailurePercent: 30 })]
    expect(fates(stored(), blocks, savedAgain)).toEqual([['already-there', 'same-number']])
  })

  it('is rejected with other values, of the specimen or of its result', () => {
    const database = stored()
    expect(fates(database, [readBlock(2, { number: 'A-1', adhesive: 'epoxy E4' })])).toEqual([
      ['rejected', 'other-value'],
    ])
    expect(fates(database, [readBlock(2, { number: 'A-1', peakN: 5001 })])).toEqual([['rejected', 'other-result']])
    expect(fates(database, [readBlock(2, { number: 'A-1', woodFailurePercent: 35 })])).toEqual([
      ['rejected', 'other-result'],
    ])
  })

  it('gives its result to a specimen that waits, and is rejected by one that broke on the press', () => {
    const database = archiveInMemory()
    addSpecimens(database, [specimenFields('C1-1'), specimenFields('C1-2')], morning, 'bench')
    storeBreak(database, 2)
    const block = (number: string) => readBlock(2, { number, exposure: '', wood: '' })
    expect(fates(database, [block('C1-1'), block('C1-2')])).toEqual([
      ['new', null],
      ['rejected', 'other-result'],
    ])
  })

  it('whose result was set aside comes in with another, and with other values where an import said them all', () => {
    const database = stored()
    setAside(database)
    const again = (values: object) => fates(database, [readBlock(2, { number: 'A-1', ...values })])
    expect(again({ woodFailurePercent: 30 })).toEqual([['already-there', 'set-aside']])
    expect(again({ peakN: 5001 })).toEqual([['new', null]])
    expect(again({ adhesive: 'epoxy E4', peakN: 5001 })).toEqual([['new', null]])
    const { fields } = specimen(database, 1).current
    correctSpecimen(database, 1, { ...fields, place: 'box 3' }, '2031-05-04T09:00:00.000Z', 'Ada Thole', 'moved')
    expect(again({ adhesive: 'epoxy E4', peakN: 5001 })).toEqual([['rejected', 'other-value']])
    expect(again({ peakN: 5001 })).toEqual([['new', null]])
  })

  it('that stands twice in a table is one, or a contradiction', () => {
    const blocks = [2, 3, 4].map((row) => readBlock(row, { number: 'B-1', peakN: row === 4 ? 1 : 5000 }))
    expect(judgeImport(archiveInMemory(), file, blocks)).toMatchObject([
      { fate: 'new' },
      { fate: 'already-there', cause: { kind: 'number-twice', row: 2, same: true } },
      { fate: 'rejected', cause: { kind: 'number-twice', row: 2, same: false } },
    ])
  })
})

describe('a block without a number', () => {
  const blocks = (...loads: number[]) => loads.map((peakN, index) => readBlock(index + 2, { peakN }))
  const stored = (...loads: number[]) => {
    const database = archiveInMemory()
    importBlocks(database, blocks(...loads))
    return database
  }

  it('is there already at the same row and column of the same file; equal ones are as many as there are', () => {
    const database = archiveInMemory()
    const across = ['1', '2'].map((column) => readBlock(2, {}, column))
    expect(importBlocks(database, across).map(({ fate }) => fate)).toEqual(['new', 'new'])
    expect(fates(database, [...across, readBlock(2, {}, '3'), readBlock(3, {}, '1')])).toEqual([
      ['already-there', 'same-place'],
      ['already-there', 'same-place'],
      ['new', null],
      ['new', null],
    ])
  })

  it('of another sheet of the same file is new', () => {
    const database = archiveInMemory()
    importBlocks(database, blocks(1, 2), { file: { ...file, sheet: 'loft' } })
    expect(fates(database, blocks(3, 4), { ...file, sheet: 'bilge' })).toEqual([
      ['new', null],
      ['new', null],
    ])
    expect(fates(database, blocks(3, 4), { ...file, sheet: 'loft' })[0]).toEqual(['already-there', 'same-place'])
  })

  it('is new alone of a sheet that has grown, at its end or in its middle', () => {
    const grownFates = (...loads: number[]) => fates(stored(1, 1, 2), blocks(...loads), savedAgain)
    const [there, fresh] = [
      ['already-there', 'grown'],
      ['new', null],
    ]
    expect(grownFates(1, 1, 2, 1, 3)).toEqual([there, there, there, fresh, fresh])
    expect(grownFates(9, 1, 1, 7, 2)).toEqual([fresh, there, there, fresh, there])
  })

  it('is rejected where its sheet was corrected since, and new in a sheet that has little in common', () => {
    expect(fates(stored(1, 2, 3), blocks(1, 2, 4, 5), savedAgain)).toEqual([
      ['already-there', 'grown'],
      ['already-there', 'grown'],
      ['rejected', 'changed'],
      ['new', null],
    ])
    expect(fates(stored(1, 2, 3), blocks(1, 7, 8), savedAgain).map(([fate]) => fate)).toEqual(['new', 'new', 'new'])
  })

  it('whose import was set aside comes in anew where it changed, from the same file or one saved again', () => {
    const database = stored(1, 2, 3)
    setAside(database)
    expect(fates(database, blocks(1, 20, 30))).toEqual([
      ['already-there', 'set-aside'],
      ['new', null],
      ['new', null],
    ])
    expect(judgeImport(database, file, blocks(1, 20, 30)).map(({ specimenId }) => specimenId)).toEqual([1, 2, 3])
    expect(judgeImport(database, savedAgain, blocks(1, 20)).map(({ fate, specimenId }) => [fate, specimenId])).toEqual([
      ['new', null],
      ['new', null],
    ])
  })

  it('whose result alone was set aside comes in anew from a later state of its file, where it was corrected', () => {
    const database = stored(1, 2, 3, 4)
    for (const typedResultId of [2, 3]) decideTypedResult(database, { ...word, typedResultId, kind: 'set-aside' })
    const later = judgeImport(database, savedAgain, blocks(1, 20, 3, 4, 5))
    expect(later.map(({ fate, cause, specimenId }) => [fate, cause?.kind ?? null, specimenId])).toEqual([
      ['already-there', 'grown', 1],
      ['new', null, 2],
      ['already-there', 'set-aside', 3],
      ['already-there', 'grown', 4],
      ['new', null, null],
    ])
  })
})
