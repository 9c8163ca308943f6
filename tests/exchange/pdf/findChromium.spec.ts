import { delimiter, join } from 'node:path'
import { expect, test } from 'vitest'
import { findChromium } from '#exchange/pdf/findChromium.ts'

const only =
  (...present: string[]) =>
  (file: string) =>
    present.includes(file)

test('the named one comes first', () => {
  const environment = { CHROMIUM_PATH: '/opt/own/chromium', PATH: '/usr/bin' }
  expect(findChromium(environment, only('/opt/own/chromium', '/usr/bin/chromium'))).toBe('/opt/own/chromium')
})

test('a named one that is not there is not replaced by another', () => {
  expect(findChromium({ CHROMIUM_PATH: '/opt/gone' }, only('/usr/bin/chromium'))).toBeNull()
})

test('else the usual places are looked at, then the path', () => {
  expect(findChromium({}, only('/usr/bin/chromium'))).toBe('/usr/bin/chromium')
  const onPath = join('/home/ada/bin', 'google-chrome')
  expect(findChromium({ PATH: ['/empty', '/home/ada/bin'].join(delimiter) }, only(onPath))).toBe(onPath)
})

test('none is said to be none', () => {
  expect(findChromium({ PATH: '/usr/bin' }, () => false)).toBeNull()
})
