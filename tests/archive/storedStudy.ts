import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { onTestFinished } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { appendSamples, beginBreak, finishBreak } from '#archive/breaks/breaks.ts'
import { migrate, migrations } from '#archive/core/migrate.ts'
import { noteDerivation } from '#archive/lists/derivation.ts'
import type { BreakHeader } from '#contract/breaks/capture.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { Evaluation, NewEvaluation } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'

// Pieces of the invented Saltmarsh Boatyard School study that the tests of the archive store.

export const morning = '2031-05-02T09:30:00.000Z'
export const settings = detectionSettings.parse({})
export const scale: ForceScale = { kind: 'uncalibrated-scale', nPerCount: 0.01 }

/** A folder that is gone after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-archive-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** An archive in memory, as the record functions see it. */
export function archiveInMemory(): Database.Database {
  const database = archiveInFormat(migrations.length)
  noteDerivation(database)
  return database
}

/** The same in an older format. */
export function archiveInFormat(version: number): Database.Database {
  const database = new Database(':memory:')
  onTestFinished(() => void database.close())
  database.pragma('foreign_keys = ON')
  database.pragma('recursive_triggers = ON')
  migrate(database, migrations.slice(0, version), 'breakledger test', morning)
  return database
}

export function specimenFields(number: string, change: Partial<SpecimenFields> = {}): SpecimenFields {
  return {
    number,
    adhesive: 'casein C1',
    lot: 'C1-2031-a',
    wood: 'beech',
    board: '',
    jointType: 'long grain to long grain',
    exposure: 'loft',
    bondLineGapMm: 0,
    overlapLengthMm: 30,
    overlapWidthMm: 20,
    areaMm2: 600,
    gluedOn: '2031-03-01',
    place: 'shelf 2',
    notes: '',
    demo: true,
    ...change,
  }
}

export const session = {
  startedAt: morning,
  source: 'virtual amplifier: brittle',
  lineFormat: 'number',
  program: 'breakledger 0.1.0',
}

export function header(sessionId: number, specimenId: number | null): Omit<BreakHeader, 'breakId'> {
  return { sessionId, specimenId, startedAt: morning, readingUnit: 'counts', scale, tare: null, settings }
}

/** A ramp at 1 kHz to `peakCounts` and the fall after it. */
export function rampAndFall(samples: number, peakCounts: number): SampleBlock {
  const timeUs = new Float64Array(samples)
  const readings = new Float64Array(samples)
  const peakAt = Math.floor(samples * 0.9)
  for (let i = 0; i < samples; i++) {
    timeUs[i] = i * 1000
    readings[i] = i <= peakAt ? Math.round((peakCounts * i) / peakAt) : (i * 7919) % 50
  }
  return { timeUs, readings }
}

/** The evaluation that fits rampAndFall. */
export function evaluationOf(
  curve: SampleBlock,
  change: Partial<Evaluation['result']> = {},
): Omit<NewEvaluation, 'breakId'> {
  const peak = curve.readings.reduce((highest, reading) => Math.max(highest, reading), 0)
  return {
    madeAt: morning,
    method: 'test 1',
    settings,
    scale,
    tareOffset: 0,
    result: {
      outcome: 'break',
      peakN: peak * 0.01,
      peakTimeS: (curve.timeUs[curve.readings.indexOf(peak)] ?? 0) / 1e6,
      onsetTimeS: 0.1,
      breakTimeS: null,
      sampleRateHz: 1000,
      samples: curve.timeUs.length,
      missingSamples: 0,
      noiseN: 0.1,
      loadingRateNPerS: 100.25,
      samplingBoundN: 0.1,
      samplingBoundPercent: 0.2,
      afterBreakN: null,
      flags: ['uncalibrated'],
      events: [],
      ...change,
    },
  }
}

/** Stores a finished break and returns its id. */
export function storeBreak(
  database: Database.Database,
  specimenId: number | null,
  curve: SampleBlock = rampAndFall(500, 600_000),
  change: Partial<Evaluation['result']> = {},
): number {
  const { sessionId } = beginSession(database, session)
  const { breakId } = beginBreak(database, header(sessionId, specimenId))
  for (let start = 0; start < curve.timeUs.length; start += 100)
    appendSamples(database, breakId, {
      timeUs: curve.timeUs.subarray(start, start + 100),
      readings: curve.readings.subarray(start, start + 100),
    })
  finishBreak(database, breakId, morning, 'complete', 0, evaluationOf(curve, change))
  return breakId
}
