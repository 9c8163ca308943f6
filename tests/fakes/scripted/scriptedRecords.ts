import type { BenchState } from '#contract/bench/bench.ts'
import type { BreakRecord, BreakSummary } from '#contract/breaks/break.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { detectionMethod } from '#domain/signal/loading/evaluateCurve.ts'
import { madeEvent } from '../madeEvents.ts'
import { namedAsWritten } from './namedAsWritten.ts'

const adhesives = [
  'casein C1',
  'resorcinol R2',
  'one-part polyurethane U3',
  'epoxy E4',
  'cross-linking PVA V5',
  'urea-formaldehyde F6',
]
const startedAt = Date.UTC(2026, 4, 11, 8, 0, 0)
/** So many minutes after the morning on which everything scripted happens. */
export const at = (minutes: number) => new Date(startedAt + minutes * 60_000).toISOString()

/** The specimen at a place of the list: twelve blocks of each adhesive of the demo study. */
export function scriptedSpecimen(index: number): SpecimenSummary {
  const adhesive = adhesives[Math.floor(index / 12) % adhesives.length]!
  const number = `${adhesive.split(' ').at(-1)}-LL-${String((index % 12) + 1 + 12 * Math.floor(index / 72)).padStart(2, '0')}`
  const fields: SpecimenFields = {
    number,
    adhesive,
    lot: 'bottle 3',
    wood: 'beech',
    board: '',
    jointType: 'long grain to long grain',
    exposure: index % 2 === 0 ? 'loft' : 'bilge',
    bondLineGapMm: 0,
    overlapLengthMm: 30,
    overlapWidthMm: 20,
    areaMm2: 600,
    gluedOn: '2026-04-20',
    place: `loft shelf ${1 + (index % 4)}`,
    notes: '',
    demo: true,
  }
  return {
    specimenId: index + 1,
    revision: 1,
    recordedAt: at(0),
    by: 'bench 1',
    reason: '',
    fields,
    named: namedAsWritten(fields),
    study: null,
    ageMonths: null,
    breakInForce: null,
    typedResultInForce: null,
    results: 0,
    timesBroken: 0,
    withdrawn: null,
  }
}

/** A bench that waits for load, with the first two specimens at hand. */
export function scriptedBench(preferences: Preferences, specimens: readonly SpecimenSummary[]): BenchState {
  return {
    connection: { status: 'open', source: preferences.source, label: 'virtual amplifier: mixed', problem: null },
    phase: 'waiting',
    armed: true,
    signal: {
      sampleRateHz: 80,
      jitterS: 0.0002,
      clock: 'device',
      missingSamples: 0,
      restarts: 0,
      deviceFaults: [],
      rejectedLines: 0,
      rejectedExample: null,
      noise: 1.1,
      startThreshold: 40,
      unstableBecause: null,
    },
    scale: { kind: 'uncalibrated-scale', nPerCount: preferences.nPerCount ?? 0.012 },
    calibration: null,
    calibrationUnused: null,
    capacityN: preferences.capacityN,
    tareWarning: null,
    zeroMoved: null,
    busyWith: null,
    tare: { offset: 12.4, sd: 1.1, readings: 80, takenAt: new Date(Date.now() - 150_000).toISOString() },
    overload: 'none',
    capacityShare: null,
    runningPeak: null,
    captureBreakId: null,
    outcomeBreakId: null,
    specimen: specimens[0] ?? null,
    again: false,
    next: specimens[1] ?? null,
    waitingSpecimens: Math.max(specimens.length - 1, 0),
    breaking: null,
    lastBreak: null,
    storageProblem: null,
  }
}

/** A finished break of the specimen at hand, with one result. `more`: what differs in that. */
export function scriptedBreak(
  breakId: number,
  bench: BenchState,
  peakN: number,
  change: Partial<BreakSummary>,
  more: Partial<EvaluationResult>,
): BreakRecord {
  const fields = bench.specimen?.fields ?? null
  const settings = detectionSettings.parse({ capacityN: bench.capacityN, startThresholdN: bench.signal.startThreshold })
  const summary: BreakSummary = {
    breakId,
    startedAt: at(10 + 2 * breakId),
    ending: 'complete',
    specimenId: bench.specimen?.specimenId ?? null,
    number: fields?.number ?? null,
    adhesive: fields?.adhesive ?? null,
    jointType: fields?.jointType ?? null,
    exposure: fields?.exposure ?? null,
    areaMm2: fields?.areaMm2 ?? null,
    outcome: 'break',
    peakN,
    overruled: null,
    strengthMPa: fields?.areaMm2 && (change.outcome ?? 'break') === 'break' ? peakN / fields.areaMm2 : null,
    samplingBoundPercent: 0.24,
    flags: ['uncalibrated'],
    scaleKind: bench.scale.kind,
    verification: null,
    woodFailurePercent: null,
    failurePattern: null,
    note: '',
    setAside: null,
    setAsideCause: null,
    resultsOfSpecimen: (change.outcome ?? 'break') === 'break' && (change.setAside ?? null) === null ? 1 : 0,
    demo: true,
    simulated: true,
    ...change,
  }
  const result: EvaluationResult = {
    outcome: summary.outcome ?? 'none',
    peakN,
    peakTimeS: 9.4,
    onsetTimeS: 2.35,
    breakTimeS: 9.4125,
    sampleRateHz: 80,
    samples: 872,
    missingSamples: 0,
    noiseN: 1.1,
    loadingRateNPerS: 780,
    samplingBoundN: summary.samplingBoundPercent === null ? null : (peakN * summary.samplingBoundPercent) / 100,
    samplingBoundPercent: summary.samplingBoundPercent,
    afterBreakN: 210,
    flags: summary.flags,
    events: [madeEvent({ kind: 'seating', startTimeS: 2.35, endTimeS: 3.1 })],
    course: null,
    ...more,
  }
  return {
    summary,
    header: {
      breakId,
      sessionId: 1,
      specimenId: summary.specimenId,
      startedAt: summary.startedAt,
      readingUnit: 'counts',
      scale: bench.scale,
      tare: bench.tare,
      settings,
    },
    end: {
      breakId,
      endedAt: summary.startedAt,
      ending: 'complete',
      samples: result.samples,
      missingSamples: 0,
      // SHA-256 of no bytes at all, as FIPS 180 implementations print it; only its look matters here.
      curveSha256: 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
    },
    session: {
      sessionId: 1,
      startedAt: at(0),
      source: 'virtual amplifier: mixed',
      lineFormat: 'checked',
      program: 'Breakledger 0.1.0',
    },
    verifications: [],
    evaluations: [
      {
        evaluationId: breakId,
        breakId,
        madeAt: summary.startedAt,
        method: detectionMethod,
        settings,
        scale: bench.scale,
        tareOffset: bench.tare?.offset ?? 0,
        result,
        reevaluationId: null,
        besideId: null,
      },
    ],
    inForceId: breakId,
    assessments: [],
    decisions: [],
  }
}
