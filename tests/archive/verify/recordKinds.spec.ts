import { globSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { LedgeredKind } from '#archive/core/recordKind.ts'
import { recordKinds } from '#archive/verify/recordKinds.ts'
import { projectFolder } from '#shells/start/build.ts'

function isKind(value: unknown): value is LedgeredKind {
  return typeof value === 'object' && value !== null && 'name' in value && 'ids' in value && 'content' in value
}

test('name every kind that any file of the archive declares, each once', async () => {
  const folder = join(projectFolder, 'electron/archive')
  const files = globSync('*/*.ts', { cwd: folder })
  const modules = await Promise.all(files.map((file) => import(join(folder, file)) as Promise<Record<string, unknown>>))
  const declared = modules.flatMap((exported) => Object.values(exported).filter(isKind))
  const names = declared.map(({ name }) => name).toSorted()
  expect(names.length).toBeGreaterThan(10)
  expect(recordKinds.map(({ name }) => name).toSorted()).toEqual(names)
})
