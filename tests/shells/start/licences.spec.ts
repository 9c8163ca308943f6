import { expect, test } from 'vitest'
import { projectFolder } from '#shells/start/build.ts'
import { licenceTexts } from '#shells/start/licences.ts'

test('holds the text of the program and of every package that is bundled or packed', () => {
  const text = licenceTexts(projectFolder)
  expect(text).toMatch(/^Breakledger\n\nMIT License/)
  for (const name of ['better-sqlite3', 'serialport', 'react', 'uplot', 'ws', 'zod', 'd3-scale', 'ms'])
    expect(text).toContain(`\n${name} `)
  expect(text).not.toContain('typescript ')
  expect(text.match(/Permission (is hereby granted|to use)/g)!.length).toBeGreaterThan(30)
})

test('fails for a package that has no text and no reason', () => {
  expect(() => licenceTexts(projectFolder, {})).toThrow('has no licence text')
})
