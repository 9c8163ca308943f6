import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { takeTouched } from '#archive/core/touched.ts'
import { allocateStudy } from '#archive/programme/allocateStudy.ts'
import { addStudy, correctStudy, newestStudy, studies, study } from '#archive/programme/studies.ts'
import { verify } from '#archive/verify/verify.ts'
import { madeBoards, madeStudy } from '#tests/domain/programme/study/madeStudy.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

let database: Database.Database
beforeEach(() => {
  database = archiveInMemory()
})

const later = '2031-06-02T09:30:00.000Z'
const boards = madeBoards(6, 40)
const allocate = (studyId: number) =>
  allocateStudy(
    database,
    () => {},
    () => false,
    studyId,
    morning,
    'bench',
  )

describe('a study', () => {
  it('is kept with every version, the newest in force', () => {
    const { studyId } = addStudy(database, madeStudy(), morning, 'bench')
    takeTouched(database)
    correctStudy(database, studyId, madeStudy({ title: 'Which glue?' }), later, 'Mara', 'a plainer title')
    expect(takeTouched(database)).toEqual(expect.arrayContaining([`study ${studyId}`]))
    const record = study(database, studyId)
    expect(record.current).toMatchObject({ revision: 2, by: 'Mara', reason: 'a plainer title' })
    expect(record.revisions.map(({ fields }) => fields.title)).toEqual([
      'Which adhesive lasts in the bilge?',
      'Which glue?',
    ])
    expect(verify(database, () => {}).faults).toEqual([])
  })

  it('is refused under the title of another, which no choice of studies would tell from it', () => {
    const { studyId } = addStudy(database, madeStudy({ title: 'Loft' }), morning, 'bench')
    expect(() => addStudy(database, madeStudy({ title: 'LOFT' }), morning, 'bench')).toThrow(/“Loft” already/)
    addStudy(database, madeStudy({ title: 'Bilge' }), morning, 'bench')
    expect(() => correctStudy(database, studyId, madeStudy({ title: 'bilge' }), later, 'Mara', 'plainer')).toThrow(
      /already/,
    )
    correctStudy(database, studyId, madeStudy({ title: 'loft' }), later, 'Mara', 'plainer')
    expect(studies(database).rows.map(({ fields }) => fields.title)).toEqual(['Bilge', 'loft'])
  })

  it('is refused where no memory would hold its blocks, at once and as a newer version', () => {
    const names = (what: string) => Array.from({ length: 200 }, (_, i) => `${what} ${i}`)
    const large = madeStudy({ adhesives: names('A'), jointTypes: names('J'), exposures: names('E') })
    expect(() => addStudy(database, large, morning, 'bench')).toThrow('24000000 cells')
    const { studyId } = addStudy(database, madeStudy(), morning, 'bench')
    const many = madeStudy({ blocksPerCell: 1000, adhesives: names('A') })
    expect(() => correctStudy(database, studyId, many, later, 'Mara', 'more')).toThrow('1200000 blocks')
  })

  it('gives what it names an entry in the catalogue', () => {
    addStudy(database, madeStudy({ boards: [{ name: 'plank 7', blocks: 300 }], wood: 'beech' }), morning, 'bench')
    const names = database.prepare('SELECT name FROM catalogue_current').pluck().all()
    expect(names).toEqual(expect.arrayContaining(['casein C1', 'bilge', 'lap', 'beech', 'plank 7']))
  })

  it('stands in the list newest first, with what became of its blocks', () => {
    const first = addStudy(database, madeStudy(), morning, 'bench')
    addStudy(database, madeStudy({ title: 'Another' }), later, 'bench')
    allocate(first.studyId)
    expect(studies(database).rows.map(({ fields, counts }) => [fields.title, counts.allocated])).toEqual([
      ['Another', 0],
      ['Which adhesive lasts in the bilge?', 216],
    ])
  })

  it('that nobody planned is not found', () => {
    expect(() => newestStudy(database, 7)).toThrow(/no study 7/)
  })
})

describe('a newer version of an allocated study', () => {
  it.each([
    ['another seed', { seed: 8 }, /seed/],
    ['fewer adhesives', { adhesives: ['casein C1'] }, /144 allocated blocks belong to 12 cells/],
    ['fewer blocks a cell', { blocksPerCell: 11 }, /12 allocated blocks/],
    ['fewer spares', { sparesPerSeries: 0 }, /1 allocated spares/],
    ['a board less', { boards: boards.slice(1) }, /37 allocated blocks are cut from the board board 1/],
  ])('is refused with %s, and nothing is stored', (_what, changed, message) => {
    const before = madeStudy({ boards, sparesPerSeries: 1, ...('adhesives' in changed ? { sparesPerSeries: 0 } : {}) })
    const { studyId } = addStudy(database, before, morning, 'bench')
    allocate(studyId)
    expect(() => correctStudy(database, studyId, { ...before, ...changed }, later, 'bench', 'less')).toThrow(message)
    expect(study(database, studyId).revisions).toHaveLength(1)
  })

  it('may add levels and ages', () => {
    const { studyId } = addStudy(database, madeStudy({ boards }), morning, 'bench')
    allocate(studyId)
    const more = madeStudy({ boards: madeBoards(6, 80), agesMonths: [0, 3, 12, 24] })
    expect(correctStudy(database, studyId, more, later, 'bench', 'two years').revision).toBe(2)
  })
})
