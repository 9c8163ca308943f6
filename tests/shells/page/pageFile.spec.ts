import { expect, test } from 'vitest'
import { pageFile } from '#shells/page/pageFile.ts'

test('"/" is the page, other paths are files by name', () => {
  expect(pageFile('/')).toEqual({ segments: ['index.html'], contentType: 'text/html; charset=utf-8' })
  expect(pageFile('/assets/index-B1_x.js')).toEqual({
    segments: ['assets', 'index-B1_x.js'],
    contentType: 'text/javascript; charset=utf-8',
  })
  expect(pageFile('/licences.txt')?.contentType).toBe('text/plain; charset=utf-8')
  expect(pageFile('/assets/inter.woff2')?.contentType).toBe('font/woff2')
})

test.each([
  '',
  'index.html',
  '//index.html',
  '/.',
  '/..',
  '/../package.json',
  '/assets/../../package.json',
  '/assets/..\\..\\package.json',
  '/%2e%2e/package.json',
  '/..%2fpackage.json',
  '/%00index.html',
  '/index.html\0.js',
  '/.env.js',
  '/assets/.hidden.css',
  '/C:/windows/win.js',
  '/assets/',
  '/assets',
  '/index',
  '/main.ts',
  '/archive.breakledger',
  '/x.constructor',
  '/x.__proto__',
])('"%s" is no file of the page', (path) => {
  expect(pageFile(path)).toBeNull()
})
