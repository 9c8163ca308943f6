import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it, onTestFinished } from 'vitest'
import { meanTreatment, overviewFilter } from '#contract/findings/overview.ts'
import { overviewGroups } from '#domain/findings/overview/overviewGroups.ts'
import { overviewOf } from '#domain/findings/overview/overviewOf.ts'
import { overviewSheet } from '#exchange/findings/overviewSheet.ts'
import { printByChromium } from '#exchange/pdf/chromiumPdf.ts'
import { findChromium } from '#exchange/pdf/findChromium.ts'
import { overviewDrawing } from '#figures/findings/overview/overviewDrawing.ts'
import { madeOverviewBlocks } from '#tests/fakes/scripted/scriptedOverview.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const overview = overviewOf(madeOverviewBlocks(), overviewFilter.parse({}))
const head = { title: 'Loft & <bilge>', instant: '2031-05-02T09:30:00.000Z' }
const chromium = findChromium(process.env)
const hasPoppler = (() => {
  try {
    execFileSync('pdfinfo', ['-v'], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
})()

describe('overviewSheet', () => {
  it('says what it is of, from which day, and that nobody measured it', () => {
    const html = overviewSheet(overview, { kind: 'blocks' }, head, 'SI')
    expect(html).toContain('<p>Loft &amp; &lt;bilge&gt;, 2 May 2031. All blocks shown are simulated')
    expect(html).toContain('@page { size: A3 landscape')
  })
  it('shows the chosen view in the units of the reader', () => {
    const treatment = meanTreatment.parse({ woodFailure: 'bond-only', limitPercent: 60 })
    const html = overviewSheet(overview, { kind: 'means', treatment, reference: null }, head, 'US')
    expect(html).toContain('Mean strength, psi, torn wood bond failures only (below 60 % torn wood)')
  })
  it.skipIf(chromium === null || !hasPoppler)('prints on one sheet of A3 across, with every name on it', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-sheet-'))
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
    const file = join(folder, 'overview.pdf')
    writeFileSync(file, await printByChromium(chromium!, overviewSheet(overview, { kind: 'blocks' }, head, 'SI')))
    const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' })
    expect(info).toMatch(/^Pages:\s+1$/m)
    // A3 is 420 mm x 297 mm (ISO 216), 1 point 25.4 / 72 mm
    const [, width, height] = /^Page size:\s+([\d.]+) x ([\d.]+) pts/m.exec(info)!.map(Number)
    expect(width!).toBeCloseTo((420 / 25.4) * 72, -1)
    expect(height!).toBeCloseTo((297 / 25.4) * 72, -1)
    const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' })
    for (const name of [
      'casein C1',
      'resorcinol R2',
      'loft',
      'bilge',
      '120',
      '75 % wood failure or more',
      'on the shelf',
    ])
      expect(text).toContain(name)
  })
})

describe('overviewDrawing', () => {
  const groups = overviewGroups(overview)
  it('leaves spares out of the means, and nothing out of the blocks', () => {
    const quantities = quantitiesIn('SI')
    const means = overviewDrawing(
      groups,
      { kind: 'means', treatment: meanTreatment.parse({}), reference: null },
      quantities,
    )
    expect(overviewDrawing(groups, { kind: 'blocks' }, quantities).groups).toBe(groups)
    expect(means.groups).toEqual(groups.filter(({ ageMonths }) => ageMonths !== null))
    expect(means.words).toHaveLength(means.groups.length)
  })
})
