import { expect, test } from 'vitest'
import type { ByteSource } from '#acquisition/byteSource.ts'
import { holdPress, loadVirtual, putVirtualWeights } from '#engine/bench/device/virtualPress.ts'

const real: ByteSource = { label: '/dev/ttyTEST', open: async () => {}, close: async () => {} }
function virtual() {
  const did: unknown[] = []
  const source = {
    ...{ ...real, nPerCount: 0.01 },
    loadNow: () => did.push('load'),
    putWeights: (forceN: number) => did.push(forceN),
    holdPress: (held: boolean) => did.push(held),
  }
  return { did, source }
}

test('loads and hangs by itself on the virtual bench only', () => {
  const { did, source } = virtual()
  loadVirtual(source, false)
  putVirtualWeights(source, 196)
  expect(did).toEqual(['load', 196])
  expect(() => loadVirtual(real, false)).toThrow(expect.objectContaining({ code: 'unsupported' }))
  expect(() => putVirtualWeights(real, 196)).toThrow(expect.objectContaining({ code: 'unsupported' }))
})

test('loads no specimen while the bench is taken', () => {
  const { did, source } = virtual()
  expect(() => loadVirtual(source, true)).toThrow(expect.objectContaining({ code: 'conflict' }))
  expect(did).toEqual([])
})

test('holds the press where an open one can be held, and nothing else', () => {
  const { did, source } = virtual()
  const link = (status: 'open' | 'closed', held: ByteSource) => ({
    connection: () => ({ status, source: null, label: '', problem: null }),
    source: () => held,
  })
  holdPress(link('closed', source), true)
  holdPress(link('open', real), true)
  holdPress(link('open', source), true)
  expect(did).toEqual([true])
})
