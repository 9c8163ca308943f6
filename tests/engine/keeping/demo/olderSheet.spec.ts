import { expect, it } from 'vitest'
import { olderSheet } from '#engine/keeping/demo/olderSheet.ts'
import { readImportTable } from '#engine/specimens/importTable.ts'

const { fileName, bytes, mapping } = olderSheet('2028-05-26')

it('is a sheet of which every load is read, in the groups of five adhesives, with wood failure by its colours', async () => {
  const { rows } = await readImportTable(fileName, bytes, mapping)
  const read = rows.flatMap((row) => (row.outcome === 'read' ? [row.values] : []))
  expect(read).toHaveLength(rows.length)
  expect(read.length).toBeGreaterThan(60)
  expect(read.length).toBeLessThan(80)
  expect(new Set(read.map(({ adhesive, brokenOn }) => `${adhesive} ${brokenOn}`)).size).toBe(10)
  expect(new Set(read.map(({ woodFailurePercent }) => woodFailurePercent))).toEqual(new Set([0, 25, 50, 75, 100]))
  // 1 in x 3/4 in
  for (const { areaMm2, peakN } of read) {
    expect(areaMm2).toBeCloseTo(483.87, 2)
    expect(peakN! / areaMm2!).toBeGreaterThan(2)
    expect(peakN! / areaMm2!).toBeLessThan(9)
  }
})

it('is the same file each time', () => {
  expect(olderSheet('2028-05-26').bytes.equals(bytes)).toBe(true)
})
