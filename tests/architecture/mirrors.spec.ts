import { describe, expect, it } from 'vitest'
import { hasLogic, mirrorOf, namedSpec, reachedFrom } from './mirrors.ts'

describe('a file with logic', () => {
  it.each([
    ['a branch', 'export const f = (a: number) => (a ? 1 : 2)'],
    ['a loop', 'export function f() { for (const x of y) g(x) }'],
    ['arithmetic', 'export const f = (a: number) => g(a * 2)'],
    ['a comparison', 'export const f = (a: number) => a === b'],
  ])('is one with %s in a function', (_what, text) => {
    expect(hasLogic('a.ts', text)).toBe(true)
  })

  it.each([
    ['types', 'export type A = B extends C ? 1 : 2'],
    ['constants', 'export const share = 1 / 5\nexport const names = ["a"] as const'],
    ['what others do', "export { a } from './a.ts'\nexport const f = (a: number) => b({ ...a, c: [1] })"],
  ])('is none that holds %s alone', (_what, text) => {
    expect(hasLogic('a.ts', text)).toBe(false)
  })
})

describe('the test of a file', () => {
  it('has its place in the mirror', () => {
    expect(mirrorOf('electron/domain/a/b.ts')).toBe('tests/domain/a/b.spec.ts')
    expect(mirrorOf('renderer/pages/A.tsx')).toBe('tests/renderer/pages/A.spec.tsx')
  })

  it('or is named in a line of its own', () => {
    expect(namedSpec('// Held by tests/domain/a/c.spec.ts.\nimport ...')).toBe('tests/domain/a/c.spec.ts')
    expect(namedSpec('/** Held by tests/domain/a/c.spec.ts. */')).toBeNull()
  })

  it('comes to what it imports, by alias or by path, through others and while it runs, and to nothing else', () => {
    const texts: Record<string, string> = {
      'tests/domain/a/b.spec.ts': "import { c } from '#domain/a/c.ts'\nconst d = await import('./d.ts')",
      'tests/domain/a/d.ts': "import type { E } from '#renderer/e.tsx'",
      'electron/domain/a/c.ts': "import z from 'zod'",
      'renderer/e.tsx': '',
      'electron/domain/a/b.ts': '',
    }
    expect([...reachedFrom('tests/domain/a/b.spec.ts', Object.keys(texts), (path) => texts[path]!)].sort()).toEqual([
      'electron/domain/a/c.ts',
      'renderer/e.tsx',
      'tests/domain/a/b.spec.ts',
      'tests/domain/a/d.ts',
    ])
  })
})
