import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { projectFiles, projectFolder, readProjectFile } from './projectFiles.ts'
import { textsOf } from './sentences.ts'
import { woff2Characters } from './woff2Characters.ts'

type Face = { family: string; file: string; holds(character: number): boolean }

/** The faces of the page; one holds a character that its rule names and its file has a letter for. */
const faces: Face[] = [...readProjectFile('renderer/theme/typefaces.css').matchAll(/@font-face \{([^}]*)\}/g)].map(
  ([, rule = '']) => {
    const value = (name: string) => new RegExp(`${name}:\\s*([^;]*);`).exec(rule)?.[1] ?? ''
    const file = /url\("([^"]*)"\)/.exec(value('src'))?.[1] ?? ''
    const ranges = value('unicode-range')
      .split(/,\s*/)
      .map((range) => range.slice(2).split('-'))
      .map(([from = '', to = from]) => [Number.parseInt(from, 16), Number.parseInt(to, 16)] as const)
    const inFile = woff2Characters(readFileSync(join(projectFolder, 'node_modules', file)))
    return {
      family: value('font-family').replaceAll('"', ''),
      file,
      holds: (character) => inFile.has(character) && ranges.some(([from, to]) => character >= from && character <= to),
    }
  },
)

/** Typefaces in the order in which a text asks them, without the last, which is the machine's. */
const asked = (token: string) =>
  (new RegExp(`--${token}:\\s*([^;]*);`).exec(readProjectFile('renderer/theme/tokens.css'))?.[1] ?? '')
    .split(/,\s*/)
    .map((family) => family.replaceAll('"', ''))
    .slice(0, -1)

const missing = (text: string, families: readonly string[]) =>
  [...text].filter((character) => {
    const code = character.codePointAt(0)!
    return code > 32 && !faces.some(({ family, holds }) => families.includes(family) && holds(code))
  })

describe('the typefaces of the page', () => {
  it('are open, compressed, and no two rules bring the same', () => {
    expect(faces.length).toBeGreaterThan(3)
    expect(new Set(faces.map(({ file }) => file)).size).toBe(faces.length)
    for (const { file } of faces) {
      const [scope, name] = file.split('/')
      expect(file).toMatch(/\.woff2$/)
      expect(JSON.parse(readProjectFile(`node_modules/${scope}/${name}/package.json`)).license).toBe('OFL-1.1')
      expect(readProjectFile(`node_modules/${scope}/${name}/LICENSE`)).toContain('SIL OPEN FONT LICENSE Version 1.1')
    }
  })

  it.each(['sans', 'serif', 'mono'])(
    'have every letter and sign of Western and Central Europe and of units in %s',
    (token) => {
      const signs = 'ÀéßñøŁőžŞčσµΔΩ²³°±−×·½…–’“”≥≤∞√€←→↑↓0123456789'
      expect(asked(token).length).toBeGreaterThan(0)
      expect(missing(signs, asked(token))).toEqual([])
    },
  )

  it('have every sign that the program may show', () => {
    const shown = projectFiles()
      .filter((path) => /^(electron|renderer)\/.*\.tsx?$/.test(path))
      .filter((path) => /[^\p{ASCII}]/u.test(readProjectFile(path)))
      .flatMap((path) => textsOf(path, readProjectFile(path)))
      .flatMap(({ text, path }) => missing(text, asked('sans')).map((character) => `${character} in ${path}`))
    // The mark before what a schema complains of, which is taken off
    expect(shown).toEqual(['✖ in electron/archive/core/databaseTrouble.ts'])
  })

  it('would notice a sign that they do not have', () => {
    expect(missing('a ☃', asked('sans'))).toEqual(['☃'])
  })
})
