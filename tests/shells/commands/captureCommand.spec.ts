import { mkdtemp, readFile, rm, symlink, unlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it, type TestContext } from 'vitest'
import { openArchive } from '#archive/openArchive.ts'
import type { Flag } from '#contract/breaks/evaluation.ts'
import { commands } from '#shells/commands/commands.ts'
import { type CommandProcess, startCommand } from '#tests/fakes/commandProcess.ts'
import { runWords } from '#tests/fakes/commandRun.ts'
import { placeInStream, runPortCapture } from '#tests/fakes/ports/portCapture.ts'
import { eventually } from '#tests/fakes/ports/ptyPlug.ts'

// Real pseudo-terminals; on Windows there are none.
const onUnix = process.platform !== 'win32'

/** Captures end by their number of breaks, long before; a machine under load may take its time. */
const patienceS = '200'

/** An archive that is not there yet, and programs of a test's own; all are gone after it. */
async function ownPlace({ onTestFinished }: TestContext) {
  const folder = await mkdtemp(join(tmpdir(), 'breakledger-command-'))
  const running: CommandProcess[] = []
  onTestFinished(async () => {
    // Readers first: a port that is still open must not become that of another test.
    for (const { child, ended } of running.toReversed()) {
      child.kill('SIGKILL')
      await ended
    }
    await rm(folder, { recursive: true, force: true })
  })
  const start = (words: readonly string[]) => {
    const command = startCommand(words, { XDG_DATA_HOME: folder })
    running.push(command)
    return command
  }
  return { folder, archivePath: join(folder, 'a.breakledger'), start }
}

/** Waits until so many samples of the first break can be read from the file; resolves with how many there were. */
async function storedSamples(path: string, least: number): Promise<number> {
  const archive = await openArchive({ path, program: 'test', mode: 'read' })
  let samples = 0
  await eventually(async () => {
    samples = (await archive.readCurve(1)).timeS.length
    return samples >= least
  })
  await archive.close()
  return samples
}

// Programs that wait for each other's samples most of the time: side by side they take no longer than the slowest.
describe.runIf(onUnix)('capture', { concurrent: true }, () => {
  // The others of the sixteen pairs of line format and rate are run by "npm run soak -- capture".
  it.for([
    // Seeds whose specimens are loaded quickly.
    { format: 'checked', rate: 80, speed: 20, breaks: 3, seed: 283 },
    { format: 'columns', rate: 1000, speed: 10, breaks: 1, seed: 283 },
    { format: 'crc', rate: 10_000, speed: 4, breaks: 1, seed: 130 },
    // Without device times arrival is the only clock, so this one takes the time it takes.
    { format: 'number', rate: 80, speed: 1, breaks: 1, seed: 130 },
  ])('catches every break of a $format stream at $rate Hz and stores every sample sent', async (run) => {
    const outcome = await runPortCapture({
      emulate: [
        ...['--scenario', 'brittle', '--rate', String(run.rate), '--speed', String(run.speed)],
        ...['--line-format', run.format, '--seed', String(run.seed)],
      ],
      capture: ['--line-format', run.format, '--breaks', String(run.breaks), '--timeout', patienceS],
      breaks: run.breaks,
    })
    expect(outcome.errors).toBe('')
    expect(outcome.captureExit).toBe(0)
    const kinds = outcome.events.map(({ event }) => event)
    expect(kinds[0]).toBe('connected')
    expect(kinds.indexOf('tared')).toBeLessThan(kinds.indexOf('loading'))
    expect(kinds.at(-1)).toBe('finished')
    expect(outcome.events.at(-1)).toEqual({ event: 'finished', breaks: run.breaks })

    const ends = outcome.events.filter(({ event }) => event === 'break')
    expect(ends.length).toBe(run.breaks)
    for (const [index, end] of ends.entries()) {
      const truth = outcome.truths[index]!
      const { readings, timeS } = outcome.curves[index]!
      const place = placeInStream(readings, outcome.sent)
      expect(place).not.toBeNull()
      expect(end.samples).toBe(readings.length)
      // Within the noise of the zero (1 N) of what the model says it sent, and below the true peak by the sampling bound at most.
      expect(Math.abs(Number(end.peakN) - truth.highestSampleN!)).toBeLessThan(4)
      expect(truth.peakN - Number(end.peakN)).toBeLessThan(Number(end.samplingBoundN) + 4)
      expect(place! / run.rate).toBeLessThan(truth.onsetTimeS)
      expect((place! + readings.length) / run.rate).toBeGreaterThan(truth.breakTimeS!)
      // Times by arrival are as good as this machine has time for them: sampleClock.spec holds how good.
      if (run.format !== 'number') expect(timeS.at(-1)! - timeS[0]!).toBeCloseTo((readings.length - 1) / run.rate, 5)
      expect(end.flags).toContain('uncalibrated')
      expect(end.missingSamples).toBe(0)
    }
  })

  it('stores a peak that evaluate finds again in what curve prints, and keeps the head of the chain', async (test) => {
    const { folder, archivePath, start } = await ownPlace(test)
    const emulator = start(['emulate', '--scenario', 'brittle', '--speed', '20', '--seed', '283', '--breaks', '1'])
    const { path, nPerCount } = await emulator.until((line) => 'path' in line)
    const words = ['--archive', archivePath, '--scale', String(nPerCount), '--breaks', '1', '--timeout', patienceS]
    const capture = start(['capture', '--port', String(path), ...words])
    expect(await capture.ended).toBe(0)
    const { breakId, peakN } = capture.lines.find(({ event }) => event === 'break')!
    const { event: _event, ...head } = capture.lines.at(-2)!
    expect(Object.values(JSON.parse(await readFile(join(folder, 'breakledger/heads.json'), 'utf8')))).toEqual([
      { ...head, path: archivePath },
    ])
    const written = `${head.count}:${head.hash}`
    expect((await runWords(commands, ['verify', '--archive', archivePath, '--head', written])).code).toBe(0)
    const file = join(folder, 'curve.csv')
    await writeFile(file, (await runWords(commands, ['curve', String(breakId), '--archive', archivePath])).out)
    const { lines } = await runWords(commands, ['evaluate', '--json', file])
    expect(lines[0]).toMatchObject({ outcome: 'break' })
    // Printed in whole micronewtons.
    expect(Math.abs(Number(lines[0]!.peakN) - Number(peakN))).toBeLessThanOrEqual(1e-6)
  })

  it('says on stderr what is wrong when the lines are of another format', async (test) => {
    const { archivePath, start } = await ownPlace(test)
    const emulator = start(['emulate', '--scenario', 'idle', '--line-format', 'number'])
    const { path } = await emulator.until((line) => 'path' in line)
    const capture = start(['capture', '--port', String(path), '--archive', archivePath])
    const told = () => capture.lines.filter(({ event }) => event === 'rejected-line')
    await eventually(() => told().length > 2 && capture.errors().includes('They look like'))
    capture.child.kill('SIGINT')
    expect(await capture.ended).toBe(0)
    expect(capture.errors()).toContain('none of them is a line of the format "checked"')
    expect(capture.errors()).toContain('They look like the line format number')
    // A line that is no reading is counted, not told one by one.
    expect(told().some(({ count }) => Number(count) > 1)).toBe(true)
  })

  it.for(['SIGINT', 'SIGHUP'] as const)(
    'keeps a running capture as interrupted when %s stops it, and exits 1 when breaks are missing',
    async (signal, test) => {
      const { archivePath, start } = await ownPlace(test)
      const emulator = start(['emulate', '--scenario', 'brittle', '--speed', '2'])
      const { path, nPerCount } = await emulator.until((line) => 'path' in line)
      const words = ['--archive', archivePath, '--scale', String(nPerCount), '--breaks', '5']
      const capture = start(['capture', '--port', String(path), ...words])
      const { breakId } = await capture.until(({ event }) => event === 'loading')
      capture.child.kill(signal)
      expect(await capture.ended).toBe(1)
      expect(capture.lines.find((line) => line.breakId === breakId && Array.isArray(line.flags))?.flags).toContain(
        'interrupted',
      )
    },
  )

  it('is recovered after kill -9 by the next program that opens the archive', async (test) => {
    const { archivePath, start } = await ownPlace(test)
    const emulator = start(['emulate', '--scenario', 'brittle', '--speed', '2'])
    const { path, nPerCount } = await emulator.until((line) => 'path' in line)
    const words = ['--port', String(path), '--archive', archivePath, '--scale', String(nPerCount)]
    const capture = start(['capture', ...words])
    await capture.until(({ event }) => event === 'loading')
    const stored = await storedSamples(archivePath, 60)
    capture.child.kill('SIGKILL')
    await capture.ended

    const next = start(['capture', ...words, '--timeout', '0.1'])
    expect(await next.ended).toBe(0)
    const verified = await runWords(commands, ['verify', '--json', '--archive', archivePath])
    expect(verified).toMatchObject({ code: 0, err: '' })
    const curve = await runWords(commands, ['curve', '1', '--archive', archivePath])
    expect(curve.code).toBe(0)
    const rows = curve.out.trim().split('\n')
    expect(rows[0]).toBe('time_s,counts,force_N')
    // A line of headings, and at least what another program had seen in the file.
    expect(rows.length).toBeGreaterThan(stored)
  })

  it.for([
    ['a port that is not there', ['--port', '/dev/ttyNOWHERE0'], /no port/],
    ['a file that is no port', ['--port', import.meta.filename], /not a serial port|cannot be opened|no port/],
    ['a calibration that is not there', ['--port', '/dev/ttyNOWHERE0', '--calibration', '7'], /calibration 7/],
  ] as const)('exits 1 with one clear message for %s', async ([_what, words, said], test) => {
    const { archivePath } = await ownPlace(test)
    const { code, out, err } = await runWords(commands, ['capture', '--json', '--archive', archivePath, ...words])
    expect(code).toBe(1)
    expect(out).toBe('')
    expect(err).toMatch(said)
  })

  it('keeps a capture whose device is unplugged, marks it, and ends cleanly on Ctrl-C', async (test) => {
    const { folder, archivePath, start } = await ownPlace(test)
    const emulator = start(['emulate', '--scenario', 'brittle', '--speed', '2'])
    const { path, nPerCount } = await emulator.until((line) => 'path' in line)
    // A name of its own: the path that it waits for must not come back as the port of another program.
    const plug = join(folder, 'port')
    await symlink(String(path), plug)
    const capture = start(['capture', '--port', plug, '--archive', archivePath, '--scale', String(nPerCount)])
    await capture.until(({ event }) => event === 'loading')
    await unlink(plug)
    emulator.child.kill('SIGINT')
    const end = await capture.until(({ event }) => event === 'break' || event === 'unloading')
    expect(end.flags).toContain('interrupted' satisfies Flag)
    await capture.until(({ event }) => event === 'disconnected')
    capture.child.kill('SIGINT')
    expect(await capture.ended).toBe(0)
    expect(capture.lines.at(-1)).toMatchObject({ event: 'finished' })
    expect((await runWords(commands, ['verify', '--archive', archivePath])).code).toBe(0)
  })
})
