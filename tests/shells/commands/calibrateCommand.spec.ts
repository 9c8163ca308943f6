import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { straightCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import { calibrationResult } from '#contract/calibration/calibrationAssessment.ts'
import { commands } from '#shells/commands/commands.ts'
import { startCommand } from '#tests/fakes/commandProcess.ts'
import { runWords } from '#tests/fakes/commandRun.ts'
import { pontius } from '../../domain/calibration/fit/fixtures/pontius.ts'

let folder = ''
let file = ''
let archivePath = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-calibrate-'))
  file = join(folder, 'calibration.csv')
  archivePath = join(folder, 'a.breakledger')
})
afterEach(() => rm(folder, { recursive: true, force: true }))

const header = 'run,direction,force_N,reading'
const write = (...lines: string[]) => writeFile(file, `${[header, ...lines].join('\n')}\n`)
// The data set has the deflection as the fitted quantity and the load as what it is fitted over.
const pontiusLines = pontius.map(([deflection, load], i) => `${1 + Math.floor(i / 20)},up,${deflection},${load}`)
/** The emulated cell at five known forces, read without a fault. */
const cellLines = [0, 125, 250, 375, 500].map(
  (forceN) => `1,up,${forceN},${straightCharacteristic.zeroCounts + forceN / straightCharacteristic.nPerCount}`,
)
const calibrate = (...words: string[]) => runWords(commands, ['calibrate', file, '--archive', archivePath, ...words])

/** So many significant digits of two numbers agree (the log relative error of NIST StRD). */
const digits = (found: number, certified: number) => -Math.log10(Math.abs(found - certified) / Math.abs(certified))

describe('calibrate', () => {
  it('prints the certified values of NIST StRD Pontius to nine digits and more', async () => {
    await write(...pontiusLines)
    const { code, lines } = await calibrate('--degree', '2', '--json')
    expect(code).toBe(0)
    expect(lines).toHaveLength(1)
    const result = calibrationResult.parse(lines[0])
    // https://www.itl.nist.gov/div898/strd/lls/data/Pontius.shtml
    const certified = [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14]
    const certifiedSD = [0.107938612033077e-3, 0.157817399981659e-9, 0.486652849992036e-16]
    certified.forEach((value, power) => {
      expect(digits(result.coefficients[power]!, value)).toBeGreaterThan(9)
      expect(digits(result.coefficientSE[power]!, certifiedSD[power]!)).toBeGreaterThan(9)
    })
    expect(digits(result.residualSD!, 0.205177424076185e-3)).toBeGreaterThan(9)
    expect(digits(result.rSquared, 0.999999900178537)).toBeGreaterThan(9)
    expect(Object.keys(result)).toEqual([
      'degree',
      'coefficients',
      'coefficientSE',
      'residualSD',
      'rSquared',
      'readings',
      'verifiedRangeN',
      'steps',
      'class',
      'expandedUncertaintyPercent',
    ])
    expect(result).toMatchObject({ degree: 2, readings: 40, verifiedRangeN: [0.11019, 2.16844] })
  })

  it('proposes degree 2 for these data and says why, for people', async () => {
    await write(...pontiusLines)
    const { code, out } = await calibrate()
    expect(code).toBe(0)
    expect(out).toMatch(/degree 2, 40 readings/)
    expect(out).toMatch(/proposed +Degree 2: .*not significant/)
    expect(out).toMatch(/not a traceable certificate/)
  })

  it('fits the sample of a shop as R does', async () => {
    const { code, lines } = await runWords(commands, ['calibrate', '--json', 'samples/shop-weights.csv'])
    expect(code).toBe(0)
    // R: d <- read.csv("samples/shop-weights.csv", comment.char = "#")
    //    coef(lm(force_N ~ reading + I(reading^2), d))
    const byR = [-4.81975266024e2, 1.00198312809e-2, -2.76945023235e-11]
    expect(lines[0]).toMatchObject({ degree: 2, readings: 21, verifiedRangeN: [981.25, 4906.25] })
    byR.forEach((value, power) => {
      expect(digits((lines[0]!.coefficients as number[])[power]!, value)).toBeGreaterThan(9)
    })
  })

  it('holds the curve at zero when asked', async () => {
    await write(...cellLines.map((line) => line.replace(/\d+$/, (reading) => String(Number(reading) - 48_213))))
    const { lines } = await calibrate('--json', '--degree', '1', '--through-zero')
    expect(lines[0]!.coefficients).toMatchObject([0, expect.closeTo(0.01, 12)])
  })

  it.each([
    ['a number that is none', ['1,up,0,10', '1,up,ten,20'], /line 3: force_N is "ten"/],
    ['a direction that is none', ['1,sideways,0,10'], /line 2: direction is "sideways"/],
    ['a run that is none', ['0,up,0,10'], /line 2: run is 0/],
    ['no readings', [], /line 1: no readings/],
    ['two equal loads', ['1,up,0,10', '', '1,up,50,20', '1,up,50,21'], /line 5 \(run 1, up, 50 N\): the same load/],
    ['falling steps in a rising run', ['1,up,0,10', '1,up,90,20', '1,up,50,15'], /line 4 .*force is lower/],
    ['a negative force', ['1,up,-5,10'], /line 2 .*negative/],
    ['a cell wired in reverse', ['1,up,0,10', '1,up,50,-40', '1,up,90,-80'], /wired in reverse/],
    ['a reading that moves the wrong way', ['1,up,0,1', '1,up,5,6', '1,up,9,5', '1,up,12,13'], /line 4 .*wrong way/],
  ])('refuses %s with one message that names file and line', async (_what, rows, said) => {
    await write(...rows)
    const { code, out, err } = await calibrate('--json')
    expect({ code, out }).toEqual({ code: 1, out: '' })
    expect(err).toContain(file)
    expect(err).toMatch(said)
  })

  it('refuses too few steps for the degree, and a file without the columns', async () => {
    await write('1,up,0,10', '1,up,50,60')
    expect((await calibrate('--degree', '3')).err).toMatch(/degree 3 needs at least 4 different loads/)
    await writeFile(file, 'run,direction,force_lbf,reading\n1,up,0,10\n')
    expect((await calibrate()).err).toMatch(/line 1: there is no column force_N/)
    expect((await runWords(commands, ['calibrate', join(folder, 'none.csv')])).err).toMatch(/no such file/)
  })

  it('takes a reversed cell when the person says so, and says how to', async () => {
    await write('1,up,0,10', '1,up,50,-40', '1,up,90,-80')
    const { err } = await calibrate()
    expect(err).toMatch(/Add --inverted if that is always so, or swap/)
    expect(err).not.toMatch(/so far/)
    const { lines } = await calibrate('--json', '--degree', '1', '--inverted')
    expect(lines[0]!.coefficients).toMatchObject([expect.closeTo(10, 9), expect.closeTo(-1, 9)])
  })

  it.each([['--degree', '4'], ['--save'], ['--name', 'May'], ['--save', '--name', '']])(
    'exits 2 for %s %s',
    async (...words) => {
      await write(...cellLines)
      expect((await calibrate(...words)).code).toBe(2)
    },
  )

  it('keeps the head of the chain, and says so when an older copy of the archive was put back', async () => {
    await write(...cellLines)
    await calibrate('--save', '--name', 'May')
    const older = await readFile(archivePath)
    expect((await calibrate('--save', '--name', 'June')).err).toBe('')
    await writeFile(archivePath, older)
    expect((await calibrate('--save', '--name', 'July')).err).toMatch(/lacks records that it held before/)
  })

  it('keeps the calibration under its name, in an archive that verifies', async () => {
    await write(...cellLines)
    const { code, lines } = await calibrate('--json', '--save', '--name', 'May')
    expect(code).toBe(0)
    expect(lines[0]).toMatchObject({ calibrationId: 1, verifiedRangeN: [125, 500] })
    const verified = await runWords(commands, ['verify', '--json', '--archive', archivePath])
    expect(verified).toMatchObject({ code: 0, lines: [expect.objectContaining({ sound: true, ledgerEntries: 2 })] })
  })
})

describe('a calibration that was kept', () => {
  const curve = (peakCounts: number) =>
    [
      'time_s,counts',
      ...Array.from({ length: 400 }, (_, i) => {
        const loaded = i < 100 ? 0 : i < 300 ? ((i - 100) / 200) * peakCounts : 0
        return `${(i / 80).toFixed(4)},${Math.round(48_213 + loaded + ((i * 7919) % 7) - 3)}`
      }),
    ].join('\n')

  it('turns counts into newtons in evaluate, and flags what lies above its range', async () => {
    await write(...cellLines)
    await calibrate('--save', '--name', 'May')
    const inside = join(folder, 'inside.csv')
    const above = join(folder, 'above.csv')
    await writeFile(inside, curve(40_000))
    await writeFile(above, curve(200_000))
    const words = [
      'evaluate',
      inside,
      above,
      '--archive',
      archivePath,
      '--calibration',
      '1',
      '--tare',
      '48213',
      '--json',
    ]
    const { code, lines } = await runWords(commands, words)
    expect(code).toBe(0)
    // 40,000 and 200,000 counts at 0.01 N; the ramp's last sample stands 0.5 % below its end.
    expect(lines.map(({ peakN }) => peakN)).toEqual([expect.closeTo(398, 0), expect.closeTo(1990, 0)])
    expect(lines[0]!.flags).not.toContain('above-verified-range')
    expect(lines[0]!.flags).not.toContain('uncalibrated')
    expect(lines[1]!.flags).toContain('above-verified-range')
    const both = await runWords(commands, [...words, '--scale', '0.01'])
    expect(both).toMatchObject({ code: 2, err: expect.stringContaining('exclude each other') })
    expect(
      (
        await runWords(
          commands,
          words.map((word) => (word === '1' ? '9' : word)),
        )
      ).err,
    ).toMatch(/calibration 9/)
  })

  it.runIf(process.platform !== 'win32')(
    'is what capture finds peaks with: each break names it, and carries its warning',
    async () => {
      await write(...cellLines)
      await calibrate('--save', '--name', 'May')
      const emulator = startCommand([
        ...['emulate', '--scenario', 'brittle', '--rate', '80', '--speed', '20', '--seed', '283', '--breaks', '1'],
      ])
      try {
        const { path } = await emulator.until((line) => 'path' in line)
        const words = ['capture', '--port', String(path), '--archive', archivePath, '--calibration', '1']
        const capture = startCommand([...words, '--capacity', '25000', '--breaks', '1', '--timeout', '200'])
        try {
          expect(await capture.ended).toBe(0)
          const end = capture.lines.find(({ event }) => event === 'break')!
          const peakN = Number(end.peakN)
          expect(peakN).toBeGreaterThan(1000)
          expect(end).toMatchObject({
            calibrationId: 1,
            timesVerified: expect.closeTo(peakN / 500, 9),
            expandedUncertaintyN: null,
          })
          expect(end.flags).toContain('above-verified-range')
          expect(end.flags).not.toContain('uncalibrated')
        } finally {
          capture.child.kill('SIGKILL')
        }
      } finally {
        emulator.child.kill('SIGKILL')
      }
      expect((await runWords(commands, ['verify', '--archive', archivePath])).code).toBe(0)
    },
  )
})
