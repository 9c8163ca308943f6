import { expect, test } from 'vitest'
import { keptWeights, saveWeights } from '#archive/calibration/weightSets.ts'
import { shopWeights } from '#tests/fakes/routineRun.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

test('has no weights before any were saved', () => {
  expect(keptWeights(archiveInMemory())).toEqual({ weights: [], savedAt: null, by: '' })
})

test('gives the set that was saved last and keeps the ones before it', () => {
  const database = archiveInMemory()
  saveWeights(database, shopWeights([20, 20]), morning, 'bench')
  const saved = saveWeights(database, shopWeights([20, 10, 5]), morning, 'bench 2')
  expect(saved).toEqual({ weights: shopWeights([20, 10, 5]), savedAt: morning, by: 'bench 2' })
  expect(keptWeights(database)).toEqual(saved)
  expect(database.prepare('SELECT count(*) FROM weight_set').pluck().get()).toBe(2)
})
