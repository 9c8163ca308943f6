import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createBenchModel } from '#acquisition/virtual/benchModel.ts'
import { straightCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { listQuery } from '#contract/listQuery.ts'
import { specimenFields } from '#contract/specimens/specimen.ts'
import { curveCsvText } from '#exchange/csv/curveCsv.ts'
import { type Benchmark, type Measurement, medianMs, medianMsOfEach } from './measurement.ts'
import { programmeMeasurements } from './programmeArchive.ts'

const instant = '2031-05-02T09:30:00.000Z'
const rateHz = 1000
/** SD of the converter's noise in codes of 24 bits: a quiet amplifier, and a poor one with 14 bits free of noise. */
const noiseCounts = [50, 1000]
const samplesToWeigh = 500_000
/** Length of one break: 25 s. */
const samplesInBreak = 25_000
const longCurve = 1_000_000
/** Lists of so many specimens, of which some are broken already, and how long one page of them may take, ms. */
const lists = [{ specimens: 10_000, broken: 1000, mostMs: 50 }]
const addedAtOnce = 10_000

/** What a stored sample weighs, how fast a long curve opens, how fast a long list is searched. */
export const archiveBenchmark: Benchmark = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-bench-'))
  try {
    const measurements: Measurement[] = []
    for (const noise of noiseCounts) measurements.push(await weighSamples(folder, noise))
    measurements.push(await openLongCurve(folder))
    for (const list of lists) measurements.push(...(await searchSpecimens(folder, list)))
    measurements.push(...(await programmeMeasurements(folder)))
    return measurements
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Growth of the file per sample, everything that belongs to a break and every page left free included. */
async function weighSamples(folder: string, noise: number): Promise<Measurement> {
  const path = join(folder, `noise-${noise}.breakledger`)
  const empty = await openArchive({ path, program: 'bench' })
  await empty.close()
  const before = statSync(path).size
  const archive = await openArchive({ path, program: 'bench' })
  const curve = benchCurve(samplesToWeigh, noise)
  for (let from = 0; from < samplesToWeigh; from += samplesInBreak) {
    const timeUs = curve.timeUs.subarray(from, from + samplesInBreak)
    const startUs = timeUs[0] ?? 0
    const readings = curve.readings.subarray(from, from + samplesInBreak)
    await storeCurve(archive, { timeUs: timeUs.map((time) => time - startUs), readings })
  }
  await archive.close()
  const bytes = (statSync(path).size - before) / samplesToWeigh
  const csv = byteLength(csvOf(curve)) / samplesToWeigh
  return {
    what: `stored sample, 24 bits, noise SD ${noise} counts`,
    value: bytes,
    unit: 'bytes',
    baseline: { name: 'CSV text', value: csv, times: csv / bytes },
    target: { text: 'at most 2.5', met: bytes <= 2.5 },
  }
}

async function openLongCurve(folder: string): Promise<Measurement> {
  const archive = await openArchive({ path: join(folder, 'long.breakledger'), program: 'bench' })
  const curve = benchCurve(longCurve, noiseCounts[0] ?? 0)
  const breakId = await storeCurve(archive, curve)
  const csvFile = join(folder, 'long.csv')
  writeFileSync(csvFile, [...csvOf(curve)].join(''))
  const { opening, parsing } = await medianMsOfEach(7, {
    async opening() {
      const { timeS } = await archive.readCurve(breakId)
      if (timeS.length !== longCurve) throw new RangeError(`read ${timeS.length} samples of ${longCurve}`)
    },
    parsing: () => parseCsv(csvFile),
  })
  await archive.close()
  return {
    what: 'open a stored curve of 1,000,000 samples',
    value: opening,
    unit: 'ms',
    baseline: { name: 'CSV, split and parseFloat', value: parsing, times: parsing / opening },
    target: { text: 'under 60', met: opening < 60 },
  }
}

async function searchSpecimens(
  folder: string,
  { specimens, broken, mostMs }: (typeof lists)[number],
): Promise<Measurement[]> {
  const path = join(folder, `list-${specimens}.breakledger`)
  const archive = await openArchive({ path, program: 'bench' })
  const adhesives = ['casein C1', 'resorcinol R2', 'polyurethane U3', 'epoxy E4', 'cross-linking PVA V5']
  const fields = Array.from({ length: specimens }, (_, i) =>
    specimenFields.parse({
      number: `${adhesives[i % 5]?.slice(-2)}-LL-${i + 1}`,
      adhesive: adhesives[i % 5],
      exposure: i % 2 === 0 ? 'loft' : 'bilge',
      areaMm2: 600,
      place: `shelf ${i % 40}`,
      demo: true,
    }),
  )
  const added: { specimenId: number }[] = []
  for (let from = 0; from < specimens; from += addedAtOnce)
    added.push(...(await archive.addSpecimens(fields.slice(from, from + addedAtOnce), instant, 'bench')))
  const shortCurve = { timeUs: Float64Array.of(0, 1000, 2000), readings: Float64Array.of(1, 2, 3) }
  for (const { specimenId } of added.filter((_, i) => i % (specimens / broken) === 0))
    await storeCurve(archive, shortCurve, specimenId)
  const many = specimens.toLocaleString('en-GB')
  const queries = {
    [`list ${many} specimens (first 200)`]: listQuery.parse({}),
    [`filter ${many} specimens by two words`]: listQuery.parse({ text: 'epoxy bilge' }),
    [`sort ${many} specimens by strength, filtered`]: listQuery.parse({
      text: 'shelf',
      sort: 'strengthMPa',
      descending: true,
    }),
  }
  const measurements: Measurement[] = []
  for (const [what, query] of Object.entries(queries)) {
    const value = await medianMs(9, () => archive.listSpecimens(query))
    measurements.push({
      what,
      value,
      unit: 'ms',
      baseline: null,
      target: { text: `under ${mostMs}`, met: value < mostMs },
    })
  }
  await archive.close()
  const opening = await medianMs(3, async () => (await openArchive({ path, program: 'bench' })).close())
  const target = { text: 'under 1000', met: opening < 1000 }
  return [
    ...measurements,
    { what: `open an archive of ${many} specimens`, value: opening, unit: 'ms', baseline: null, target },
  ]
}

/** Breaks one after the other on the virtual bench, as one curve. */
function benchCurve(length: number, noise: number): SampleBlock {
  const noiseN = noise * straightCharacteristic.nPerCount
  const bench = createBenchModel({
    scenario: 'brittle',
    rateHz,
    seed: 1,
    characteristic: straightCharacteristic,
    noiseN,
  })
  const samples = {
    timeUs: new Float64Array(length),
    counts: new Float64Array(length),
    sequence: new Float64Array(length),
  }
  if (bench.fill(samples) !== length) throw new RangeError('the virtual bench ended early')
  return { timeUs: samples.timeUs.map((time) => time - (samples.timeUs[0] ?? 0)), readings: samples.counts }
}

async function storeCurve(
  archive: Archive,
  { timeUs, readings }: SampleBlock,
  specimenId: number | null = null,
): Promise<number> {
  const settings = detectionSettings.parse({})
  const scale = { kind: 'uncalibrated-scale', nPerCount: straightCharacteristic.nPerCount } as const
  const session = { startedAt: instant, source: 'virtual amplifier: brittle', lineFormat: 'checked', program: 'bench' }
  const { sessionId } = await archive.beginSession(session)
  const header = {
    sessionId,
    specimenId,
    startedAt: instant,
    readingUnit: 'counts',
    scale,
    tare: null,
    settings,
  } as const
  const { breakId } = await archive.beginBreak(header)
  // A tenth of a second at a time, as they arrive while a break runs; copies, since a view would take its whole buffer along.
  for (let from = 0; from < timeUs.length; from += rateHz / 10) {
    const to = from + rateHz / 10
    await archive.appendSamples(breakId, { timeUs: timeUs.slice(from, to), readings: readings.slice(from, to) })
  }
  // What a curve says does not matter here, only that the record is whole.
  const result: EvaluationResult = {
    ...{
      outcome: 'break',
      peakN: 3000 + breakId,
      peakTimeS: null,
      onsetTimeS: null,
      breakTimeS: null,
      sampleRateHz: rateHz,
    },
    ...{ samples: timeUs.length, missingSamples: 0, noiseN: null, loadingRateNPerS: null, samplingBoundN: null },
    ...{ samplingBoundPercent: null, afterBreakN: null, flags: [], events: [], course: null },
  }
  const evaluation = { madeAt: instant, method: 'bench', settings, scale, tareOffset: 0, result }
  await archive.finishBreak(breakId, instant, 'complete', 0, evaluation)
  return breakId
}

function csvOf({ timeUs, readings }: SampleBlock): Iterable<string> {
  return curveCsvText({ timeS: timeUs.map((time) => time / 1e6), counts: readings, forceN: null })
}

function byteLength(pieces: Iterable<string>): number {
  let bytes = 0
  for (const piece of pieces) bytes += Buffer.byteLength(piece)
  return bytes
}

function parseCsv(file: string): { timeS: number[]; counts: number[] } {
  const timeS: number[] = []
  const counts: number[] = []
  for (const line of readFileSync(file, 'utf8').split('\n').slice(1)) {
    if (line === '') continue
    const [time = '', count = ''] = line.split(',')
    timeS.push(Number.parseFloat(time))
    counts.push(Number.parseFloat(count))
  }
  return { timeS, counts }
}
