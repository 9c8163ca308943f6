import { expect, it } from 'vitest'
import { createRejectedLines, printableText } from '#acquisition/rejectedLines.ts'

const bytes = (text: string) => new TextEncoder().encode(text)

it('tells how many lines came since the last time, and the newest', () => {
  const rejected = createRejectedLines()
  const told: [number, string][] = []
  const tell = () => rejected.tell((count, newest) => told.push([count, printableText(newest)]))
  tell()
  rejected.add(bytes('one'))
  rejected.add(bytes('two'))
  tell()
  tell()
  rejected.add(bytes('three'))
  tell()
  expect(told).toEqual([
    [2, 'two'],
    [1, 'three'],
  ])
  expect(rejected.count()).toBe(3)
  expect(rejected.example()).toBe('three')
})

it('shows bytes that are no text as middle dots', () => {
  expect(printableText(Uint8Array.from([0, 36, 66, 255, 10]))).toBe('·$B··')
})
