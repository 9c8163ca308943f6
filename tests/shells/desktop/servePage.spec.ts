import { expect, test } from 'vitest'
import { servePage } from '#shells/desktop/servePage.ts'

const asked: string[] = []
const read = async (segments: readonly string[]) => {
  const path = segments.join('/')
  asked.push(path)
  if (path !== 'index.html' && path !== 'assets/a.js') throw new Error('ENOENT')
  return new TextEncoder().encode(`content of ${path}`)
}
const get = (url: string, method = 'GET') => servePage({ method, url }, read)

test('serves the files of the page with their type and the policy', async () => {
  const page = await get('breakledger://app/')
  expect(await page.text()).toBe('content of index.html')
  expect(page.headers.get('content-type')).toBe('text/html; charset=utf-8')
  expect(page.headers.get('content-security-policy')).toContain("default-src 'none'")
  const script = await get('breakledger://app/assets/a.js?v=2#x')
  expect([script.status, script.headers.get('content-type')]).toEqual([200, 'text/javascript; charset=utf-8'])
})

test.each([
  ['breakledger://app/missing.js', 404],
  ['breakledger://app/%2e%2e/package.json', 404],
  ['breakledger://app/..%5cpackage.json', 404],
  ['breakledger://app//etc/passwd', 404],
  ['breakledger://evil/index.html', 403],
  ['file:///etc/passwd', 403],
  ['no address', 403],
])('%s is answered with %i, and with the policy', async (url, status) => {
  const answer = await get(url)
  expect(answer.status).toBe(status)
  expect(await answer.text()).toBe('')
  expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'")
})

test('only GET is answered', async () => {
  expect((await get('breakledger://app/', 'POST')).status).toBe(403)
})

test('nothing outside the page was ever asked for', () => {
  expect(asked.filter((path) => path.includes('..') || path.startsWith('/'))).toEqual([])
})
