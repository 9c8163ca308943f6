import { expect, test } from 'vitest'
import { browserCommand } from '#shells/loopback/browserCommand.ts'

const address = '/tmp/breakledger-open-a&b|c/open.html'

test('the file is one word of its own, which no shell reads', () => {
  for (const platform of ['darwin', 'win32', 'linux'] as const) {
    const words = browserCommand(address, platform, { DISPLAY: ':0' })
    expect(words?.at(-1)).toBe(address)
    expect(words?.[0]).not.toMatch(/cmd|sh$/)
  }
})

test('a Linux without a display opens nothing', () => {
  expect(browserCommand(address, 'linux', {})).toBeNull()
  expect(browserCommand(address, 'linux', { WAYLAND_DISPLAY: 'wayland-0' })?.[0]).toBe('xdg-open')
})
