import { createBenchModel } from '#acquisition/virtual/benchModel.ts'
import { straightCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import type { Archive } from '#archive/archive.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { specimenFields } from '#contract/specimens/specimen.ts'
import { evaluateRawCurve } from '#domain/signal/loading/evaluateRawCurve.ts'

const instant = '2031-05-02T09:30:00.000Z'
const rateHz = 5000
const restS = 2
/** Readings before the load of which the mean is the tare. */
const tareSamples = 5000

/**
 * Stores a group of breaks of the virtual bench, each of so many samples at 5 kHz, evaluated as the program does; resolves
 * with their numbers. The load takes as long as the samples leave room for.
 */
export async function storeGroup(archive: Archive, breaks: number, samplesEach: number): Promise<number[]> {
  const fields = Array.from({ length: breaks }, (_, i) =>
    specimenFields.parse({
      number: `E4-LL-${samplesEach > 100_000 ? 'long' : i + 1}`,
      adhesive: 'epoxy E4',
      jointType: 'long grain to long grain',
      exposure: 'loft',
      areaMm2: 600,
      demo: true,
    }),
  )
  const specimens = await archive.addSpecimens(fields, instant, 'bench')
  const breakIds: number[] = []
  for (const [i, { specimenId }] of specimens.entries())
    breakIds.push(await storeBreak(archive, specimenId, i + 1, samplesEach))
  return breakIds
}

async function storeBreak(archive: Archive, specimenId: number, seed: number, length: number): Promise<number> {
  const loadingS = length / rateHz - 2.2 * restS
  const bench = createBenchModel({
    scenario: 'brittle',
    rateHz,
    seed,
    restS: [restS, restS],
    characteristic: straightCharacteristic,
    noiseN: 6,
    specimen: (drawn) => ({
      ...drawn,
      loadingS: loadingS * (0.85 + drawn.seatingShare),
      strengthN: 4000 + (drawn.strengthN % 2000),
    }),
  })
  const samples = {
    timeUs: new Float64Array(length),
    counts: new Float64Array(length),
    sequence: new Float64Array(length),
  }
  if (bench.fill(samples) !== length) throw new RangeError('the virtual bench ended early')
  const startUs = samples.timeUs[0] ?? 0
  const timeUs = samples.timeUs.map((time) => time - startUs)
  const readings = samples.counts

  const { sessionId } = await archive.beginSession({
    startedAt: instant,
    source: 'virtual amplifier: brittle',
    lineFormat: 'checked',
    program: 'bench',
  })
  const zero = readings.slice(0, tareSamples).reduce((sum, reading) => sum + reading, 0) / tareSamples
  const offset = zero * straightCharacteristic.nPerCount
  const header = {
    sessionId,
    specimenId,
    startedAt: instant,
    readingUnit: 'counts',
    scale: { kind: 'uncalibrated-scale', nPerCount: straightCharacteristic.nPerCount },
    tare: { offset, sd: 0, readings: tareSamples, takenAt: instant },
    settings: detectionSettings.parse({}),
  } as const
  const { breakId } = await archive.beginBreak(header)
  for (let from = 0; from < length; from += rateHz)
    await archive.appendSamples(breakId, {
      timeUs: timeUs.slice(from, from + rateHz),
      readings: readings.slice(from, from + rateHz),
    })
  const result = evaluateRawCurve({ timeS: timeUs.map((time) => time / 1e6), readings }, header)
  await archive.finishBreak(breakId, instant, 'complete', 0, {
    madeAt: instant,
    method: 'bench',
    settings: header.settings,
    scale: header.scale,
    tareOffset: offset,
    result,
  })
  return breakId
}
