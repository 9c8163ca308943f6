import { expect, test } from 'vitest'
import { chainHead, chainIdentity, heldAgainst } from '#archive/keeping/chainHead.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { behindTheTriggers } from '../behindTheTriggers.ts'
import { archiveInMemory, morning, specimenFields } from '../storedStudy.ts'

test('is the newest entry, while the identity stays that of the first', () => {
  const database = archiveInMemory()
  addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  const [first, identity] = [chainHead(database)!, chainIdentity(database)]
  addSpecimen(database, specimenFields('C1-LL-2'), morning, 'bench')
  expect(chainHead(database)).toMatchObject({ count: first.count + 1, instant: morning })
  expect(chainIdentity(database)).toBe(identity)
})

test('holds a head that it had, and says when it is shorter or another', () => {
  const database = archiveInMemory()
  addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  addSpecimen(database, specimenFields('C1-LL-2'), morning, 'bench')
  const kept = chainHead(database)!
  addSpecimen(database, specimenFields('C1-LL-3'), morning, 'bench')
  expect(heldAgainst(database, kept)).toBeNull()
  expect(heldAgainst(database, { ...kept, hash: '0'.repeat(64) })).toBe('different')
  behindTheTriggers(database, `DELETE FROM ledger WHERE seq >= ${kept.count}`)
  expect(heldAgainst(database, kept)).toBe('shorter')
})
