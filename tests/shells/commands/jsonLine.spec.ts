import { expect, it } from 'vitest'
import { jsonLine, jsonPage } from '#shells/commands/jsonLine.ts'

it('is one line, whatever its texts hold', () => {
  const value = { note: 'two\nlines', peakN: 4812.5 }
  const line = jsonLine(value)
  expect(line).toMatch(/^[^\n]*\n$/)
  expect(JSON.parse(line)).toEqual(value)
})
it('has null for what is not finite', () => {
  expect(jsonLine([Number.NaN, Number.POSITIVE_INFINITY, { n: -Infinity }, 0])).toBe('[null,null,{"n":null},0]\n')
})
it('steers no terminal and says the same', () => {
  const note = '\u001b[2J\u202e'
  expect(jsonLine({ note })).toBe('{"note":"\\u001b[2J\\u202e"}\n')
  expect(JSON.parse(jsonLine({ note }))).toEqual({ note })
})
it('over several lines says the same', () => {
  const value = { column: 'Load\u200b', row: Number.NaN }
  expect(jsonPage(value)).toBe('{\n  "column": "Load\\u200b",\n  "row": null\n}\n')
})
