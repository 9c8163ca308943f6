import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { HeadFinding } from '#contract/keeping/archive.ts'
import { headOf, keptFinding } from '#engine/keeping/heldHead.ts'
import { keepHead } from '#engine/keeping/keptHeads.ts'
import { morning, temporaryFolder } from '../../archive/storedStudy.ts'

const head = (count: number) => ({ count, hash: 'a'.repeat(64), instant: morning })
const archive = (identity: string | null, count: number, against: HeadFinding | null = null) => ({
  chainIdentity: async () => identity,
  chainHead: async () => head(count),
  heldAgainst: async () => against,
  info: async () => ({
    path: '/study',
    formatVersion: 5,
    specimens: 0,
    breaks: 0,
    simulated: 0,
    own: true,
    recovered: [],
    demo: false,
  }),
})

function keptHeads(): string {
  const file = join(temporaryFolder(), 'heads.json')
  keepHead(file, 'one', { ...head(3), path: '/study' })
  return file
}

test('holds an archive by its identity, its head and its place', async () => {
  expect(await headOf(archive('one', 4))).toEqual({ identity: 'one', head: head(4), path: '/study' })
  expect(await headOf(archive(null, 4))).toBeNull()
})

test.each([
  ['nothing of one that holds what it held', archive('one', 4), null],
  ['that one is shorter', archive('one', 2, 'shorter'), 'shorter'],
  ['that another with records lies in its place', archive('two', 4), 'other'],
  ['nothing of one that was only just begun in its place', archive('two', 1), null],
])('finds %s', async (_name, asked, finding) => {
  expect((await keptFinding(asked, keptHeads()))?.finding ?? null).toBe(finding)
})
