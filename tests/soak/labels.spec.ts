import { expect, it } from 'vitest'
import { sheetOfGrid } from '#domain/programme/labels/sheetGeometry.ts'
import { findChromium } from '#exchange/pdf/findChromium.ts'
import { mostOffMm, printAndRead } from './labels.ts'
import { canReadPdf } from './printedLabels.ts'

// The smaller share of "npm run soak -- labels".

const chromium = findChromium(process.env)
const possible = chromium !== null && (await canReadPdf())

it.runIf(possible)('every printed label is read, and lies where the sheet says', async () => {
  const { read, worstCodeMm, worstTextMm, faults } = await printAndRead(chromium!, 70, sheetOfGrid('A4', 5, 13))
  expect(faults).toEqual([])
  expect(read).toBe(70)
  expect(worstCodeMm).toBeLessThanOrEqual(mostOffMm)
  expect(worstTextMm).toBeLessThanOrEqual(mostOffMm)
})
