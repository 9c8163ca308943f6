import { expect, test } from 'vitest'
import { curveSha256 } from '#archive/curves/curveHash.ts'

test('equals sha256sum over the text of the samples', () => {
  // printf '0,-12\n12500,-9\n25000,40\n37501,38\n50000,1000\n' | sha256sum
  expect(
    curveSha256({
      timeUs: Float64Array.of(0, 12_500, 25_000, 37_501, 50_000),
      readings: Float64Array.of(-12, -9, 40, 38, 1000),
    }),
  ).toBe('4a70e4421442be8a5a6459559431d34bfd4e370936889ad3e23a9cb7a0750aef')
})

test('writes decimals as the shortest text that reads back, and no sample as no text', () => {
  // printf '0,12.5\n1,0.001\n2,0\n3,0.30000000000000004\n' | sha256sum
  expect(
    curveSha256({ timeUs: Float64Array.of(0, 1, 2, 3), readings: Float64Array.of(12.5, 0.001, -0, 0.1 + 0.2) }),
  ).toBe('ee36c1ca60e93211a182428bfa370ce13a1409a59171da9ce7c910a2592951b4')
  // printf '' | sha256sum; also FIPS 180-4's example of the empty message
  expect(curveSha256({ timeUs: new Float64Array(0), readings: new Float64Array(0) })).toBe(
    'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
  )
})

test('gives the same for a curve longer than its buffer as for the text made at once', async () => {
  const { createHash } = await import('node:crypto')
  const samples = 20_000
  const timeUs = Float64Array.from({ length: samples }, (_, i) => i * 999_983)
  const readings = Float64Array.from({ length: samples }, (_, i) => Math.sin(i) * 10 ** ((i % 40) - 20))
  const text = Array.from(timeUs, (time, i) => `${time},${readings[i]}\n`).join('')
  expect(curveSha256({ timeUs, readings })).toBe(createHash('sha256').update(text).digest('hex'))
})
