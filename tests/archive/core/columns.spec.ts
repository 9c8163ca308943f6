import { expect, test } from 'vitest'
import {
  absent,
  bytes,
  contentOf,
  json,
  named,
  placesOf,
  plain,
  rowOf,
  snakeCase,
  truth,
} from '#archive/core/columns.ts'

const places = placesOf({
  peakN: plain,
  settings: json,
  demo: truth,
  example: bytes,
  cause: absent(plain),
  result: { flags: json, course: absent(json) },
  sample: { timeS: absent(named('sample_time_s')), reading: absent(named('sample_reading')) },
})

test('lays a record out in columns, members that are records over columns of their own', () => {
  const record = {
    peakN: 600.5,
    settings: { b: 1, a: null },
    demo: true,
    example: '003f',
    cause: 'other',
    result: { flags: ['gap'], course: null },
    sample: { timeS: 0.25, reading: 7 },
  }
  const row = rowOf(places, record)
  expect(row).toEqual({
    peak_n: 600.5,
    settings: '{"a":null,"b":1}',
    demo: 1,
    example: Buffer.of(0, 63),
    cause: 'other',
    flags: '["gap"]',
    course: null,
    sample_time_s: 0.25,
    sample_reading: 7,
  })
  expect(contentOf(places, row)).toEqual({ ...record, result: { flags: ['gap'] } })
})

test('writes NULL for what is missing, and leaves only that out which came with a later format', () => {
  const row = rowOf(places, { peakN: undefined, demo: false, result: { flags: [] }, sample: null })
  expect(row).toMatchObject({ peak_n: null, settings: null, demo: 0, cause: null, sample_time_s: null })
  expect(contentOf(places, row)).toEqual({
    peakN: null,
    settings: null,
    demo: false,
    example: null,
    result: { flags: [] },
  })
})

test('takes a text where bytes belong for what it is', () => {
  expect(contentOf(placesOf({ example: bytes }), { example: '?' })).toEqual({ example: '?' })
})

test.each([
  ['peakN', 'peak_n'],
  ['areaMm2', 'area_mm2'],
  ['sampleRateHz', 'sample_rate_hz'],
  ['loadingRateNPerS', 'loading_rate_n_per_s'],
  ['curveSha256', 'curve_sha256'],
  ['by', 'by'],
])('keeps %s in %s', (key, name) => {
  expect(snakeCase(key)).toBe(name)
})
