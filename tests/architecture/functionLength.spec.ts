import { expect, test } from 'vitest'
import { longFunctions } from './functionLength.ts'
import { projectFiles, readProjectFile } from './projectFiles.ts'

/** A function that is longer than two screens is not read in one go. */
const mostLines = 100

test('finds a function that is too long, by the name under which it is known', () => {
  const body = '  call()\n'.repeat(9)
  const text = `export function named() {\n${body}}\nconst kept = () => {\n${body}}\nconst short = () => 1\nuse({ held() {\n${body}} })\n`
  expect(longFunctions('planted.ts', text, 10)).toEqual([
    { name: 'named', line: 1, lines: 11 },
    { name: 'kept', line: 12, lines: 11 },
    { name: 'held', line: 24, lines: 11 },
  ])
  expect(longFunctions('planted.ts', text, 11)).toEqual([])
})

test('reads components as it reads any other function', () => {
  const text = `export function Page() {\n  return (\n    <p>\n      words\n    </p>\n  )\n}\n`
  expect(longFunctions('planted.tsx', text, 6)).toEqual([{ name: 'Page', line: 1, lines: 7 }])
})

test(`no function of the product is longer than ${mostLines} lines`, () => {
  const found = projectFiles()
    .filter((path) => /^(electron|renderer)\/.*\.tsx?$/.test(path))
    .flatMap((path) =>
      longFunctions(path, readProjectFile(path), mostLines).map(
        ({ name, line, lines }) => `${path}:${line} ${name}: ${lines} lines`,
      ),
    )
  expect(found).toEqual([])
})
