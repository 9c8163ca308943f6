import { expect, test } from 'vitest'
import { contentSecurityPolicy, pageHeaders } from '#shells/page/pageHeaders.ts'

test('the policy starts from nothing and opens only the page itself', () => {
  const directives = new Map(
    contentSecurityPolicy([])
      .split('; ')
      .map((directive) => [directive.split(' ')[0], directive.split(' ').slice(1).join(' ')]),
  )
  expect(directives.get('default-src')).toBe("'none'")
  expect(directives.get('script-src')).toBe("'self'")
  expect(directives.get('frame-ancestors')).toBe("'none'")
  for (const sources of directives.values()) expect(["'none'", "'self'"]).toContain(sources)
})

test('an address to talk to is added to connect-src and nowhere else', () => {
  const policy = contentSecurityPolicy(['ws://127.0.0.1:1'])
  expect(policy).toContain("connect-src 'self' ws://127.0.0.1:1;")
  expect(policy.match(/ws:/g)).toHaveLength(1)
})

test('the page may ask for the camera, and for nothing else of the machine', () => {
  const permissions = pageHeaders([])['Permissions-Policy']!.split(', ')
  expect(permissions).toContain('camera=(self)')
  for (const one of permissions) if (one !== 'camera=(self)') expect(one).toMatch(/=\(\)$/)
})

test('no answer may be framed, sniffed or kept', () => {
  expect(pageHeaders([])).toMatchObject({
    'X-Frame-Options': 'DENY',
    'X-Content-Type-Options': 'nosniff',
    'Cache-Control': 'no-store',
    'Referrer-Policy': 'no-referrer',
  })
})
