import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { evaluationResult } from '#contract/breaks/evaluation.ts'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-evaluate-'))
})
afterAll(() => rm(folder, { recursive: true }))

/** A ramp of 500 N/s from 2 s to 10 s (4000 N), a break to 200 N, at 100 Hz, with a little noise that repeats. */
function ramp(written: (forceN: number) => string, header = 'time_s,force_N'): string {
  const rows = Array.from({ length: 1200 }, (_, i) => {
    const timeS = i / 100
    const noise = ((i * 37) % 11) / 11 - 0.5
    const forceN = timeS < 2 ? 0 : timeS <= 10 ? (timeS - 2) * 500 : 200
    return `${timeS},${written(forceN + noise)}`
  })
  return `${header}\n${rows.join('\n')}\n`
}

async function file(name: string, text: string): Promise<string> {
  const path = join(folder, name)
  await writeFile(path, text)
  return path
}

const inNewtons = (forceN: number) => forceN.toFixed(3)

describe('evaluate', () => {
  it('prints one result per file, in order, with every key', async () => {
    const first = await file('newtons.csv', ramp(inNewtons))
    const second = await file(
      'pounds.csv',
      ramp((forceN) => (forceN / 4.4482216152605).toFixed(5), 'time_s,force_lbf'),
    )
    const { code, err, lines } = await runWords(commands, ['evaluate', '--json', first, second])
    expect({ code, err }).toEqual({ code: 0, err: '' })
    expect(lines.map((line) => line.file)).toEqual([first, second])
    for (const { file: _file, ...result } of lines) {
      expect(evaluationResult.parse(result).outcome).toBe('break')
      // What the file was made with: 4000 N at 10 s, half a newton of noise, 500 N/s every 10 ms.
      expect(Math.abs(Number(result.peakN) - 4000)).toBeLessThan(0.6)
      expect(Math.abs(Number(result.peakTimeS) - 10)).toBeLessThan(0.011)
      expect(Math.abs(Number(result.loadingRateNPerS) - 500)).toBeLessThan(10)
      expect(Math.abs(Number(result.samplingBoundN) - 5)).toBeLessThan(0.1)
      expect(Math.abs(Number(result.samplingBoundPercent) - 0.125)).toBeLessThan(0.003)
      expect(Number(result.sampleRateHz)).toBeCloseTo(100, 6)
      expect(result).toMatchObject({ samples: 1200, missingSamples: 0 })
      expect(Math.abs(Number(result.afterBreakN) - 200)).toBeLessThan(1)
    }
  })

  it('takes counts with a scale and a tare, and calls them uncalibrated', async () => {
    const path = await file(
      'counts.csv',
      ramp((forceN) => String(Math.round(forceN / 0.01) + 5000), 'time_s,counts'),
    )
    const { code, lines } = await runWords(commands, ['evaluate', '--json', '--scale', '0.01', '--tare', '5000', path])
    expect(code).toBe(0)
    expect(Math.abs(Number(lines[0]!.peakN) - 4000)).toBeLessThan(0.6)
    expect(lines[0]!.flags).toContain('uncalibrated')
  })

  it('takes the zero of counts from the rest before the load, and says so', async () => {
    const path = await file(
      'own-zero.csv',
      ramp((forceN) => String(Math.round(forceN / 0.01) + 5000), 'time_s,counts'),
    )
    const { lines, err } = await runWords(commands, ['evaluate', '--json', '--scale', '0.01', path])
    expect(Math.abs(Number(lines[0]!.peakN) - 4000)).toBeLessThan(0.6)
    expect(err).toMatch(
      /own-zero\.csv: zero (49|50)\.\d\d N taken off, the mean of \d+ steady readings before the load/,
    )
    const told = await runWords(commands, ['evaluate', '--scale', '0.01', path])
    expect(told.err).toBe('')
    expect(told.out).toMatch(/\n {2}zero +(49|50)\.\d\d N taken off/)
    const reversed = await file(
      'reversed.csv',
      ramp((forceN) => String(Math.round(-forceN / 0.01) + 5000), 'time_s,counts'),
    )
    const inverted = await runWords(commands, ['evaluate', '--json', '--scale=-0.01', reversed])
    expect(Math.abs(Number(inverted.lines[0]!.peakN) - 4000)).toBeLessThan(0.6)
  })

  it('finds in the sample of counts what truly happened', async () => {
    const { lines } = await runWords(commands, ['evaluate', '--json', '--scale', '0.01', 'samples/unloading-10hz.csv'])
    // samples/README.md: let back from 1,075 N at 6.56 s; noise of 1 N SD, sampled every 0.1 s at 300 N/s.
    expect(lines[0]).toMatchObject({ outcome: 'unloading' })
    expect(Math.abs(Number(lines[0]!.peakN) - 1075)).toBeLessThan(5)
    expect(Math.abs(Number(lines[0]!.peakTimeS) - 6.56)).toBeLessThan(0.1)
  })

  it('warns when nothing is steady before the load, and takes nothing off', async () => {
    const rows = Array.from({ length: 900 }, (_, i) => `${i / 100},${i < 600 ? 100 * i : 100 + (i % 7)}`)
    const path = await file('no-rest.csv', `time_s,counts\n${rows.join('\n')}\n`)
    const { code, lines, err } = await runWords(commands, ['evaluate', '--json', '--scale', '0.01', path])
    expect(code).toBe(0)
    expect(lines[0]).toMatchObject({ outcome: 'break', peakN: 599 })
    expect(err).toMatch(/no-rest\.csv: nothing is steady before the load.*--tare/)
    const tared = await runWords(commands, ['evaluate', '--json', '--scale', '0.01', '--tare', '100', path])
    expect(tared.lines[0]).toMatchObject({ peakN: 598 })
    expect(tared.err).toBe('')
  })

  it('says what is wrong with a file, evaluates the next one, and exits 1', async () => {
    const falling = await file('falling.csv', 'time_s,force_N\n0,1\n1,2\n0.5,3\n')
    const text = await file('text.csv', 'time_s,force_N\n0,1\n1,many\n')
    const empty = await file('empty.csv', 'time_s,force_N\n')
    const counts = await file('no-scale.csv', 'time_s,counts\n0,1\n1,2\n')
    const good = await file('good.csv', ramp(inNewtons))
    const missing = join(folder, 'missing.csv')
    const { code, err, lines } = await runWords(commands, [
      ...['evaluate', '--json', falling, text, empty, counts, missing, good],
    ])
    expect(code).toBe(1)
    expect(lines.map((line) => line.file)).toEqual([good])
    const said = err.trim().split('\n')
    expect(said.length).toBe(5)
    expect(said[0]).toContain(`${falling}, line 4: time_s is 0.5 after 1`)
    expect(said[1]).toContain(`${text}, line 3: force_N is "many"`)
    expect(said[2]).toContain(`${empty}, line 1: no samples`)
    expect(said[3]).toMatch(/no-scale\.csv.*--scale/)
    expect(said[4]).toContain(`${missing}: there is no such file`)
  })

  it('finds nothing in a curve at rest and gives null for what it cannot have', async () => {
    const rows = Array.from({ length: 500 }, (_, i) => `${i / 100},${((i * 37) % 11) / 11}`)
    const path = await file('rest.csv', `time_s,force_N\n${rows.join('\n')}\n`)
    const { code, lines } = await runWords(commands, ['evaluate', '--json', path])
    expect(code).toBe(0)
    expect(lines[0]).toMatchObject({ outcome: 'none', peakN: null, peakTimeS: null, breakTimeS: null })
    expect(Object.keys(lines[0]!)).toEqual(['file', ...Object.keys(evaluationResult.shape)])
  })

  it('says how the loading went, and the work at a speed of the press', async () => {
    const path = await file('course.csv', ramp(inNewtons))
    const { lines } = await runWords(commands, ['evaluate', '--json', '--press-speed', '0.05', path])
    const { course, events } = evaluationResult.strip().parse(lines[0])
    // 4000 N after 8 s of 500 N/s: 16,000 N s; 0.4 mm at 0.05 mm/s: 800 N mm = 0.8 J.
    expect(course!.timeToFailureS).toBeCloseTo(8, 1)
    expect(course!.meanRateNPerS! / 500).toBeCloseTo(1, 2)
    expect(course!.impulseNs! / 16_000).toBeCloseTo(1, 2)
    expect(course).toMatchObject({ pressSpeedMmPerS: 0.05, peaks: 1 })
    expect(course!.workJ! / 0.8).toBeCloseTo(1, 2)
    expect(events.map(({ kind, manner }) => [kind, manner])).toEqual([['final-drop', 'brittle']])
  })

  it('takes the work by a displacement that was measured along before that by a speed', async () => {
    // The gauge goes 1 mm in the 8 s of loading, ever faster: F = 500 t, x = t² / 64 mm;
    // W = ∫ F dx = ∫ 500 t (2 t / 64) dt from 0 to 8 = 500 x 8³ / 96 N mm = 2.6667 J.
    const text = ramp(inNewtons)
      .trim()
      .split('\n')
      .map((line, i) => (i === 0 ? `${line},displacement_mm` : `${line},${Math.max(0, (i - 1) / 100 - 2) ** 2 / 64}`))
    const path = await file('gauge.csv', `${text.join('\n')}\n`)
    const { lines, err } = await runWords(commands, ['evaluate', '--json', '--press-speed', '0.05', path])
    const { course } = evaluationResult.strip().parse(lines[0])
    expect(course!.pressSpeedMmPerS).toBeNull()
    expect(course!.workJ! / (256 / 96)).toBeCloseTo(1, 2)
    expect(err).toMatch(/gauge\.csv: work by its column displacement_mm/)
  })

  it('tells people in words', async () => {
    const { out } = await runWords(commands, ['evaluate', await file('words.csv', ramp(inNewtons))])
    expect(out).toMatch(/words\.csv: broke\n {2}peak +(3999|4000)\.\d N at (10\.0000|9\.9900) s/)
    expect(out).toContain('the true peak may lie up to 5.0 N (0.1')
    expect(out).toMatch(/\n {2}time +(7\.9|8\.0)\d s from start of loading to peak, (7\.9|8\.0)\d s to failure\n/)
    expect(out).toMatch(
      /\n {2}final-drop +10\.\d{4} to 10\.\d{4} s, drop 9\d\.\d %, brittle\n {16}The joint let go all at once/,
    )
    expect(out).not.toContain('work')
  })
})
