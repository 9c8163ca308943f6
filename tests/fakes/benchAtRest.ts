import type { BenchState } from '#contract/bench/bench.ts'
import type { OutputOf } from '#contract/procedures.ts'
import { defaultPreferences } from '#contract/settings/settings.ts'

/** A bench with nothing connected and nothing in its archive. */
export const benchAtRest: BenchState = {
  connection: { status: 'closed', source: null, label: '', problem: null },
  phase: 'no-signal',
  armed: true,
  signal: {
    sampleRateHz: null,
    jitterS: null,
    clock: null,
    missingSamples: 0,
    restarts: 0,
    deviceFaults: [],
    rejectedLines: 0,
    rejectedExample: null,
    noise: null,
    startThreshold: null,
    unstableBecause: null,
  },
  scale: { kind: 'none' },
  calibration: null,
  calibrationUnused: null,
  capacityN: null,
  tare: null,
  tareWarning: null,
  zeroMoved: null,
  busyWith: null,
  overload: 'none',
  capacityShare: null,
  runningPeak: null,
  captureBreakId: null,
  outcomeBreakId: null,
  specimen: null,
  again: false,
  next: null,
  waitingSpecimens: 0,
  breaking: null,
  lastBreak: null,
  storageProblem: null,
}

/** What a program says of itself that has just been installed. */
export const freshInfo: OutputOf<'app.info'> = {
  program: 'Breakledger 0.0.0',
  host: 'direct',
  capabilities: [],
  chainFinding: null,
  openingTrouble: null,
  demo: false,
  archive: {
    path: 'archive.breakledger',
    formatVersion: 1,
    specimens: 0,
    breaks: 0,
    simulated: 0,
    recovered: [],
    demo: false,
    own: false,
  },
  preferences: defaultPreferences,
}
