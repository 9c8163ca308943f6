import { posix } from 'node:path'
import { describe, expect, it } from 'vitest'
import { projectFiles, readProjectFile } from './projectFiles.ts'

const files = projectFiles().filter((path) => path.startsWith('renderer/'))
const sheets = files.filter((path) => path.endsWith('.css'))

/** The text without comments and without what is for paper alone, where a sheet may hide what stands around its page. */
function screenRules(text: string): string {
  const rules = text.replace(/\/\*[\s\S]*?\*\//g, '')
  const print = rules.indexOf('@media print')
  if (print < 0) return rules
  let depth = 0
  for (let at = rules.indexOf('{', print); at < rules.length; at++) {
    if (rules[at] === '{') depth++
    if (rules[at] === '}' && --depth === 0) return rules.slice(0, print) + screenRules(rules.slice(at + 1))
  }
  throw new TypeError('a block for paper has no end')
}

/** The classes that a sheet gives a meaning of their own: what it says of them holds wherever they stand. */
function definedIn(text: string): string[] {
  const selectors = [...screenRules(text).matchAll(/([^{};]+)\{/g)].flatMap(([, list = '']) =>
    list.split(/,(?![^(]*\))/),
  )
  return selectors.flatMap(
    (selector) => /^\.([\w-]+)(\[[^\]]*\]|::?[\w-]+(\(.*\))?)*$/.exec(selector.trim())?.[1] ?? [],
  )
}

describe('style sheets', () => {
  it('sees a class that two sheets define, and not one that the other only places or prints', () => {
    expect(definedIn('.tag { color: red }\n.mark:hover, .dot[data-on="a"]::before { color: red }')).toEqual([
      'tag',
      'mark',
      'dot',
    ])
    expect(
      definedIn('.side .tag { margin: 0 }\n@media print { .tag { display: none } }\n.tag > p { margin: 0 }'),
    ).toEqual([])
    expect(definedIn('@media (max-width: 9px) { .tag { margin: 0 } }')).toEqual(['tag'])
  })

  it('give each class its meaning in one place: all of them end up in one sheet', () => {
    const places = new Map<string, Set<string>>()
    for (const sheet of sheets)
      for (const name of definedIn(readProjectFile(sheet))) places.set(name, (places.get(name) ?? new Set()).add(sheet))
    const twice = [...places]
      .filter(([, where]) => where.size > 1)
      .map(([name, where]) => `${name}: ${[...where].join(', ')}`)
    expect(twice).toEqual([])
  })

  it('stand beside the component that imports them; those of the whole program are imported by its first file', () => {
    const imports = files
      .filter((path) => /\.tsx?$/.test(path))
      .flatMap((path) =>
        [...readProjectFile(path).matchAll(/^import '(\.[^']+\.css)'/gm)].map(([, target = '']) => ({
          path,
          sheet: posix.join(posix.dirname(path), target),
        })),
      )
    const apart = imports.filter(
      ({ path, sheet }) => path !== 'renderer/main.tsx' && posix.dirname(path) !== posix.dirname(sheet),
    )
    expect(apart).toEqual([])
    const imported = new Set(imports.map(({ sheet }) => sheet))
    expect(sheets.filter((sheet) => !imported.has(sheet))).toEqual([])
  })
})
