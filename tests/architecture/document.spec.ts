import { expect, it } from 'vitest'
import { projectFiles, readProjectFile } from './projectFiles.ts'

it('names in DEVELOPERS.md only files that are there', () => {
  const files = projectFiles()
  const named = [...readProjectFile('DEVELOPERS.md').matchAll(/`([\w./-]+\.(?:tsx?|mjs|css|sql|md))`/g)].map(
    (match) => match[1]!,
  )
  expect(named.length).toBeGreaterThan(50)
  expect(named.filter((name) => !files.some((file) => file === name || file.endsWith(`/${name}`)))).toEqual([])
})
