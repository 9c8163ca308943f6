import { ReadlineParser } from 'serialport'
import { startCaptureSession } from '#acquisition/captureSession.ts'
import { createLineParser } from '#acquisition/lineFormats/lineParser.ts'
import { createReadingBatch } from '#acquisition/readingBatch.ts'
import { straightCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import { createVirtualAmplifier } from '#acquisition/virtual/virtualAmplifier.ts'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createBreakDetector } from '#domain/signal/loading/breakDetector.ts'
import { createSampleClock } from '#domain/signal/stream/time/sampleClock.ts'
import { type Benchmark, computing, type Measurement, medianMsOfEach } from './measurement.ts'

const rateHz = 10_000
const samples = 1_000_000
/** As a fast port hands them over, and as a serial converter on full-speed USB does, packet by packet. */
const chunkSizes = [4096, 64]
const repeats = 9
const settings = detectionSettings.parse({ capacityN: straightCharacteristic.capacityN })

/** Bytes of one stream, cut into chunks, with the time at which each would arrive. */
type Stream = { lineFormat: LineFormatChoice; chunks: { bytes: Buffer; arrivalS: number }[] }
/** Takes the whole stream once more, as a device would that was unplugged and comes back. */
type Play = () => void

/** The way of a sample from bytes to the detector, against splitting lines and parseFloat alone. */
export const signalBenchmark: Benchmark = async () => {
  const measurements: Measurement[] = []
  const fourthField = (line: string) => Number.parseFloat(line.split(',')[3] ?? '')
  for (const chunkBytes of chunkSizes)
    measurements.push(
      ...(await compare({ name: 'number', columns: [] }, chunkBytes, (line) => Number.parseFloat(line))),
      ...(await compare({ name: 'checked', columns: [] }, chunkBytes, fourthField)),
      ...(await compare({ name: 'crc', columns: [] }, chunkBytes, fourthField)),
    )
  return measurements
}

async function compare(
  lineFormat: LineFormatChoice,
  chunkBytes: number,
  parseLine: (line: string) => number,
): Promise<Measurement[]> {
  const stream = recordStream(lineFormat, chunkBytes)
  // Each is one program that runs on while it is measured: a bench is opened in the morning, not for every specimen.
  const works = {
    lines: linesOf(stream),
    chain: chainOf(stream),
    session: sessionOf(stream),
    simple: baselineOf(stream, parseLine),
  }
  const ms = await medianMsOfEach(repeats, works, computing)
  const perSecond = (value: number) => (samples / value) * 1000
  const simple = perSecond(ms.simple)
  const measured = (what: string, value: number) => ({
    what: `${what}, "${lineFormat.name}" in chunks of ${chunkBytes} bytes`,
    value,
    unit: 'samples/s',
    baseline: { name: 'ReadlineParser + parseFloat + array', value: simple, times: value / simple },
  })
  const chain = perSecond(ms.chain)
  return [
    { ...measured('bytes, lines: as much as the baseline does', perSecond(ms.lines)), target: null },
    {
      ...measured('bytes, lines, times, detector', chain),
      target:
        chunkBytes === chunkSizes[0]
          ? { text: 'at least 1,000,000 and more than the baseline', met: chain >= 1_000_000 && chain > simple }
          : null,
    },
    { ...measured('the whole capture session', perSecond(ms.session)), target: null },
  ]
}

function recordStream(lineFormat: LineFormatChoice, chunkBytes: number): Stream {
  const amplifier = createVirtualAmplifier({ scenario: 'brittle', rateHz, seed: 1, lineFormat })
  const all = Buffer.from(amplifier.bytesUntil(Number.POSITIVE_INFINITY, samples))
  const chunks: Stream['chunks'] = []
  for (let from = 0; from < all.length; from += chunkBytes) {
    const bytes = all.subarray(from, from + chunkBytes)
    chunks.push({ bytes, arrivalS: (((from + bytes.length) / all.length) * samples) / rateHz })
  }
  return { lineFormat, chunks }
}

function linesOf({ lineFormat, chunks }: Stream): Play {
  const batch = createReadingBatch()
  const parser = createLineParser(lineFormat, batch, () => {})
  return () => {
    let readings = 0
    parser.restart()
    for (const { bytes } of chunks) {
      parser.push(bytes)
      readings += batch.count
      batch.clear()
    }
    if (readings < samples - 1) throw new RangeError(`the parser read ${readings} of ${samples} samples`)
  }
}

/** The parts of the session that see every sample, and nothing around them. */
function chainOf({ lineFormat, chunks }: Stream): Play {
  const { zeroCounts, nPerCount } = straightCharacteristic
  const batch = createReadingBatch()
  const parser = createLineParser(lineFormat, batch, () => {})
  const sampleClock = createSampleClock('us', () => {})
  let breaks = 0
  const detector = createBreakDetector(settings, {
    begin() {},
    end: ({ outcome }) => {
      if (outcome === 'break') breaks += 1
    },
  })
  let force = new Float64Array(0)
  let beganS = 0
  return () => {
    breaks = 0
    parser.restart()
    sampleClock.interrupted()
    detector.finish()
    for (const { bytes, arrivalS } of chunks) {
      parser.push(bytes)
      const untimed = sampleClock.stamp(batch.deviceTimeUs, batch.sequence, batch.count, beganS + arrivalS, batch.timeS)
      if (untimed > 0) batch.dropUntimed()
      const { count, values, timeS } = batch
      if (force.length < count) force = new Float64Array(values.length)
      for (let i = 0; i < count; i++) force[i] = (values[i]! - zeroCounts) * nPerCount
      for (let at = 0; at < count; ) at = detector.take(timeS, force, values, at, count)
      batch.clear()
    }
    beganS += samples / rateHz
    if (breaks === 0) throw new RangeError('the detector found no break: nothing was measured')
  }
}

/** The capture session as the program runs it, with a clock that keeps step with the stream. */
function sessionOf({ lineFormat, chunks }: Stream): Play {
  let nowS = 0
  let breaks = 0
  let captured = 0
  const session = startCaptureSession({
    clock: { nowS: () => nowS, instant: () => '2031-05-02T09:30:00.000Z', after: () => () => {} },
    lineFormat,
    scaleFor: () => ({ kind: 'uncalibrated-scale', nPerCount: straightCharacteristic.nPerCount }),
    settings,
    armed: true,
    listener: {
      signal() {},
      tared() {},
      begin() {},
      samples: ({ readings }) => {
        captured += readings.length
      },
      end: ({ outcome }) => {
        if (outcome === 'break') breaks += 1
      },
      frame() {},
      gap() {},
      restarted() {},
      rejected() {},
    },
  })
  let beganS = 0
  return () => {
    breaks = 0
    captured = 0
    for (const { bytes, arrivalS } of chunks) {
      nowS = beganS + arrivalS
      session.bytes(bytes, nowS)
    }
    session.interrupted()
    session.resumed()
    beganS += samples / rateHz
    if (breaks === 0 || captured === 0) throw new RangeError(`the session found ${breaks} breaks: nothing was measured`)
  }
}

function baselineOf({ chunks }: Stream, parseLine: (line: string) => number): Play {
  let readings: number[] = []
  const parser = new ReadlineParser({ delimiter: '\n' })
  parser.on('data', (line: string) => readings.push(parseLine(line)))
  return () => {
    readings = []
    for (const { bytes } of chunks) parser.write(bytes)
    if (readings.length < samples - 1)
      throw new RangeError(`the baseline read ${readings.length} of ${samples} samples`)
  }
}
