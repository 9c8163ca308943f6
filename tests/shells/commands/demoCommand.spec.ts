import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import ICAL from 'ical.js'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openArchive } from '#archive/openArchive.ts'
import { listQuery } from '#contract/listQuery.ts'
import { demoStrengthMPa } from '#engine/keeping/demo/demoJoints.ts'
import { demoSetAside } from '#engine/keeping/demo/demoPulls.ts'
import { demoBlockName, demoGroups } from '#engine/keeping/demo/demoStudy.ts'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'
import { demoNames } from '#tests/fakes/demoNames.ts'

/** Twelve blocks of six adhesives in two exposures at two ages, of which two were lost. */
const breaks = 12 * 12 * 2 - 2

let folder = ''
let archivePath = ''
let filled: Awaited<ReturnType<typeof runWords>>
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-demo-'))
  archivePath = join(folder, 'new folder', 'demo.breakledger')
  filled = await runWords(commands, ['demo', '--json', '--archive', archivePath])
})
afterAll(() => rm(folder, { recursive: true, force: true }))

const run = (...words: string[]) => runWords(commands, [...words, '--archive', archivePath])

describe('demo', () => {
  it('fills a new archive, in a folder that it makes, with the study’s specimens, older ones and their breaks', () => {
    expect(filled).toMatchObject({ code: 0, err: '' })
    // Two exposures of six adhesives: twelve blocks at seven ages and two spares
    const [{ specimens, ...said }] = filled.lines as [{ specimens: number }]
    expect(said).toEqual({ archive: archivePath, breaks })
    expect(specimens).toBeGreaterThan(1032 + 60)
  })

  it('stores curves whose peaks are those of the virtual press, everything marked as invented', async () => {
    const archive = await openArchive({ path: archivePath, program: 'test', mode: 'read' })
    try {
      const { rows } = await archive.listBreaks(listQuery.parse({ limit: 1000 }))
      expect(rows.every(({ demo, simulated }) => demo && simulated)).toBe(true)
      expect(rows.every(({ scaleKind, flags }) => scaleKind === 'calibration' && !flags.includes('uncalibrated'))).toBe(
        true,
      )
      expect(rows.every(({ outcome, woodFailurePercent }) => outcome === 'break' && woodFailurePercent !== null)).toBe(
        true,
      )
      const names = await demoNames(archive)
      expect(
        rows
          .filter(({ setAside }) => setAside !== null)
          .map(({ number }) => names.get(number!))
          .sort(),
      ).toEqual(Object.keys(demoSetAside).sort())
      const group = demoGroups.find(({ adhesive }) => adhesive.code === 'R2')!
      for (let index = 0; index < 12; index++) {
        const row = rows.find(({ number }) => names.get(number!) === demoBlockName(group, index))!
        const { board } = (await archive.specimen(row.specimenId!)).current.fields
        // The press was set to this strength
        expect(row.strengthMPa! / demoStrengthMPa(group, index, board)).toBeGreaterThan(0.97)
        expect(row.strengthMPa! / demoStrengthMPa(group, index, board)).toBeLessThan(1.03)
      }
    } finally {
      await archive.close()
    }
  })

  it('leaves an archive that holds records as it is', async () => {
    const again = await run('demo')
    expect(again.code).toBe(1)
    expect(again.err).toContain('holds records already')
  })
})

describe('verify', () => {
  it('finds the archive sound', async () => {
    const { code, lines } = await run('verify', '--json')
    expect(code).toBe(0)
    expect(lines).toEqual([expect.objectContaining({ sound: true, breaks, curves: breaks, faults: [] })])
    expect((await run('verify')).out).toMatch(/286 breaks, 286 curves and \d+ samples were checked: sound/)
  })

  it('says when there is no archive', async () => {
    const { code, out, err } = await runWords(commands, ['verify', '--json', '--archive', join(folder, 'none')])
    expect({ code, out }).toEqual({ code: 1, out: '' })
    expect(err).not.toBe('')
  })
})

describe('findings', () => {
  it('say of the demo study that all of it is simulated, in text and in JSON, whatever is asked for', async () => {
    const simulated = 'all results are simulated: every number here is invented.'
    const { lines } = await run('findings', '--json', '--only', 'rank')
    expect(lines[0]).toEqual({ kind: 'note', about: 'results', text: simulated, group: null, ageMonths: null })
    expect((await run('findings', '--only', 'rank')).out.split('\n')[0]).toContain(simulated)
  })
})

describe('calendar', () => {
  it('of the demo holds an event for each age of each adhesive, as another program reads them', async () => {
    const file = join(folder, 'pulls.ics')
    expect((await run('calendar', '--study', '1', '--out', file, '--json')).lines).toEqual([{ events: 6 * 7, file }])
    const read = new ICAL.Component(ICAL.parse(await readFile(file, 'utf8'))).getAllSubcomponents('vevent')
    const events = read.map((one) => new ICAL.Event(one))
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(6 * 7)
    // One pull was moved
    expect(events.filter(({ sequence }) => sequence > events[0]!.sequence)).toHaveLength(1)
  })
})

describe('curve', () => {
  it.each([5, 20, 40, 60])('prints curve %d, which evaluate reads with the stored peak', async (breakId) => {
    const { code, out, err } = await run('curve', String(breakId))
    expect(code).toBe(0)
    expect(err).toBe(`Break ${breakId} is simulated: every number of it is invented.\n`)
    expect(out.split('\n')[0]).toBe('time_s,counts,force_N')
    const file = join(folder, `${breakId}.csv`)
    await writeFile(file, out)
    const archive = await openArchive({ path: archivePath, program: 'test', mode: 'read' })
    const { summary } = await archive.break(breakId)
    await archive.close()
    for (const options of [[], ['--scale', '0.01']]) {
      const evaluated = await runWords(commands, ['evaluate', '--json', file, ...options])
      expect(evaluated.code).toBe(0)
      expect(evaluated.lines[0]).toMatchObject({ outcome: 'break' })
      // Printed in whole micronewtons.
      expect(Math.abs(Number(evaluated.lines[0]!.peakN) - summary.peakN!)).toBeLessThanOrEqual(1e-6)
      expect(evaluated.err).toBe(
        options.length === 0 ? '' : `${file}: evaluated from its column force_N; --scale is for curves in counts.\n`,
      )
    }
  })

  it('prints force without the noise of binary fractions', async () => {
    const { out } = await run('curve', '2')
    for (const row of out.trim().split('\n').slice(1)) expect(row.split(',')[2]).toMatch(/^-?\d+(\.\d{1,6})?$/)
    for (const { forceN } of (await run('curve', '2', '--json')).lines)
      expect(String(forceN)).toMatch(/^-?\d+(\.\d{1,6})?$/)
  })

  it('says in comments where the curve comes from, when asked', async () => {
    const { out } = await run('curve', '1', '--comments')
    expect(out).toMatch(/^# break 1, specimen \d+/m)
    expect(out).toContain('calibration')
    expect(out).toContain('# simulated: every number is invented')
  })

  it('prints one object per sample as NDJSON', async () => {
    const { lines } = await run('curve', '1', '--json')
    expect(Object.keys(lines[0]!)).toEqual(['timeS', 'counts', 'forceN'])
    expect(lines.length).toBeGreaterThan(500)
  })

  it('exits 1 for a break that is not there', async () => {
    expect(await run('curve', '999')).toMatchObject({ code: 1, out: '' })
  })
})
