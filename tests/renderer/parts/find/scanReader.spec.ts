import { beforeEach, describe, expect, it } from 'vitest'
import { createScanReader } from '#renderer/parts/find/scanReader.ts'

let scanned: string[] = []
let givenOn: string[] = []
let waiting: (() => void) | null = null
let reader = createScanReader({ later: () => () => {}, onScan: () => {}, replay: () => {} })
beforeEach(() => {
  scanned = []
  givenOn = []
  waiting = null
  reader = createScanReader({
    later(act) {
      waiting = act
      return () => {
        waiting = null
      }
    },
    onScan: (text) => scanned.push(text),
    replay: (key) => givenOn.push(key),
  })
})

/** Keys that come at once; returns which of them nobody else heard. */
const type = (...keys: string[]) => keys.map((key) => reader.hear(key))
const aMomentPasses = () => waiting?.()

describe('a scanner', () => {
  it('types a number and Enter, of which nobody else hears a key', () => {
    expect(type(...'10015', 'Enter')).toEqual([true, true, true, true, true, true])
    expect([scanned, givenOn]).toEqual([['10015'], []])
  })

  it('may type an old number without a check digit', () => {
    type(...'4120', 'Enter')
    expect(scanned).toEqual(['4120'])
  })

  it('may scan one number after the other', () => {
    type(...'10015', 'Enter', ...'10023', 'Enter')
    expect(scanned).toEqual(['10015', '10023'])
  })
})

describe('a person', () => {
  it('gets each key a moment later, where no other follows it', () => {
    expect(type('7')).toEqual([true])
    expect(givenOn).toEqual([])
    aMomentPasses()
    expect(givenOn).toEqual(['7'])
    expect(type('Enter')).toEqual([false])
    expect(scanned).toEqual([])
  })

  it('who types wood failure at once and Enter scans nothing', () => {
    for (const percent of ['5', '60', '95', '100']) expect(type(...percent, 'Enter').at(-1)).toBe(false)
    expect(scanned).toEqual([])
    expect(givenOn.join('')).toBe('56095100')
  })

  it('is never kept waiting for a letter, which leads to a place at once', () => {
    expect(type('b', 'C', '-')).toEqual([false, false, false])
  })

  it('keeps the order of keys of which some are held back', () => {
    type('1')
    expect(type('ArrowUp')).toEqual([false])
    expect(givenOn).toEqual(['1'])
  })
})

it('a key that is held down for long is not kept for ever', () => {
  type(...'1'.repeat(500))
  expect(givenOn.length).toBeGreaterThan(100)
})
