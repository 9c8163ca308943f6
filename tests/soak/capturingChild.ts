import { writeSync } from 'node:fs'
import { openArchive } from '#archive/openArchive.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { NewEvaluation } from '#contract/breaks/evaluation.ts'
import { knownSamples } from './knownSamples.ts'

// Captures known samples into the archive named on its command line until it is killed, and says on standard output, one line
// each, what the archive has acknowledged: "samples BREAK COUNT", "finished BREAK COUNT".

const samplesPerBlock = 80
const samplesPerBreak = 2400

const [, , path = ''] = process.argv
const settings = detectionSettings.parse({})
const scale = { kind: 'none' } as const

/** A pipe takes so short a line whole or not at all; who reads it may be late. */
function say(line: string): void {
  for (;;)
    try {
      writeSync(1, `${line}\n`)
      return
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error
    }
}

function evaluation(samples: number): Omit<NewEvaluation, 'breakId'> {
  return {
    madeAt: new Date().toISOString(),
    method: 'none: made for the test of a crash',
    settings,
    scale,
    tareOffset: 0,
    result: {
      outcome: 'break',
      peakN: null,
      peakTimeS: null,
      onsetTimeS: null,
      breakTimeS: null,
      sampleRateHz: 8000,
      samples,
      missingSamples: 0,
      noiseN: null,
      loadingRateNPerS: null,
      samplingBoundN: null,
      samplingBoundPercent: null,
      afterBreakN: null,
      flags: ['no-scale'],
      events: [],
    },
  }
}

const archive = await openArchive({ path, program: 'breakledger test' })
const startedAt = new Date().toISOString()
const { sessionId } = await archive.beginSession({
  startedAt,
  source: 'known samples',
  lineFormat: 'number',
  program: 'breakledger test',
})
for (;;) {
  const { breakId } = await archive.beginBreak({
    sessionId,
    specimenId: null,
    startedAt: new Date().toISOString(),
    readingUnit: 'counts',
    scale,
    tare: null,
    settings,
  })
  for (let start = 0; start < samplesPerBreak; start += samplesPerBlock) {
    await archive.appendSamples(breakId, knownSamples(breakId, start, samplesPerBlock))
    say(`samples ${breakId} ${start + samplesPerBlock}`)
  }
  await archive.finishBreak(breakId, new Date().toISOString(), 'complete', 0, evaluation(samplesPerBreak))
  say(`finished ${breakId} ${samplesPerBreak}`)
}
