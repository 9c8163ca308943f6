import { expect, test } from 'vitest'
import { canonicalJson } from '#domain/text/canonicalJson.ts'

test('sorts keys at every depth and leaves no white space', () => {
  expect(canonicalJson({ b: [{ d: 1, c: null }], a: 'x y' })).toBe('{"a":"x y","b":[{"c":null,"d":1}]}')
})

test('writes numbers and text as RFC 8785 shows', () => {
  // RFC 8785 (JSON Canonicalization Scheme), section 3.2.3, the sample object, without its control characters.
  expect(
    canonicalJson({ numbers: [Number('333333333.33333329'), 1e30, 4.5, 2e-3, 0.000000000000000000000000001] }),
  ).toBe('{"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27]}')
  expect(canonicalJson({ literals: [null, true, false] })).toBe('{"literals":[null,true,false]}')
})

test('keeps everything on one line', () => {
  expect(canonicalJson('a\nb\u2028')).not.toContain('\n')
})

test('writes half a surrogate pair as the replacement character, as SQLite stores it', () => {
  expect(canonicalJson('a\ud800b')).toBe('"a\ufffdb"')
})
