import { expect, it } from 'vitest'
import { connectionWords } from '#words/bench/connectionWords.ts'

it.each([
  ['closed', 'Not connected'],
  ['opening', 'Connecting'],
  ['open', 'Connected'],
  ['lost', 'Connection lost'],
] as const)('says of a connection that is %s: %s', (status, words) => {
  expect(connectionWords({ status, source: null, label: '', problem: null })).toBe(words)
})
