import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { writeRedirectFile } from '#shells/loopback/redirectFile.ts'

const parent = mkdtempSync(join(tmpdir(), 'breakledger-redirect-'))
afterAll(() => rmSync(parent, { recursive: true }))

test('the address stands in a file that nobody else can read, and in no name', () => {
  const { path } = writeRedirectFile('http://127.0.0.1:4321/?token=secret', parent)
  expect(path).not.toContain('secret')
  expect(readFileSync(path, 'utf8')).toContain('content="0; url=http://127.0.0.1:4321/?token=secret"')
  expect((statSync(path).mode & 0o777).toString(8)).toBe('600')
  expect((statSync(dirname(path)).mode & 0o777).toString(8)).toBe('700')
})

test('an address cannot end the attribute that it stands in', () => {
  const { path } = writeRedirectFile('http://127.0.0.1/?a=1&b="><script>', parent)
  expect(readFileSync(path, 'utf8')).not.toContain('<script>')
})

test('nothing is left of it after use', () => {
  const before = readdirSync(parent)
  const file = writeRedirectFile('http://127.0.0.1:4321/', parent)
  file.remove()
  file.remove()
  expect(existsSync(file.path)).toBe(false)
  expect(readdirSync(parent)).toEqual(before)
})
