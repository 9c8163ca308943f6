import { migrations } from '#archive/core/migrate.ts'
import type { BenchState } from '#contract/bench/bench.ts'
import type { BreakRecord, BreakSummary } from '#contract/breaks/break.ts'
import type { SetAsideCause } from '#contract/breaks/decision.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { Trouble } from '#contract/errors.ts'
import type { ArchiveInfo } from '#contract/keeping/archive.ts'
import type { OutputOf } from '#contract/procedures.ts'
import { defaultPreferences, type Preferences } from '#contract/settings/settings.ts'
import type { Specimen } from '#contract/specimens/specimen.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { topicsOf } from '#contract/topics.ts'
import { verificationOf, verifiedRangeFlags } from '#domain/calibration/verificationOf.ts'
import { scriptedKeptFindings } from './findings/scriptedKeptFindings.ts'
import { namedAsWritten } from './namedAsWritten.ts'
import { scriptedBreaking } from './scriptedBreaking.ts'
import { createScriptedCalibration, type ScriptedCalibration } from './scriptedCalibration.ts'
import { type ScriptedClimate, scriptedClimate } from './scriptedClimate.ts'
import { createScriptedEngine, type ScriptedEngine } from './scriptedEngine.ts'
import { observed, scriptedFindings } from './scriptedFindings.ts'
import { scriptedImports } from './scriptedImports.ts'
import { breakFits, paged, sortedBreaks, sortedSpecimens, specimenFits } from './scriptedLists.ts'
import { scriptedOverview } from './scriptedOverview.ts'
import { scriptedPictures } from './scriptedPictures.ts'
import { at, scriptedBench, scriptedBreak, scriptedSpecimen } from './scriptedRecords.ts'
import { createScriptedReevaluation, type ScriptedReevaluation } from './scriptedReevaluation.ts'
import { scriptedReview } from './scriptedReview.ts'
import { scriptedSessions } from './scriptedSessions.ts'
import { createScriptedStudies, type ScriptedStudies } from './scriptedStudies.ts'

export type ScriptedHost = ScriptedEngine & {
  bench(): BenchState
  setBench(change: Partial<BenchState>): void
  preferences(): Preferences
  setPreferences(change: Partial<Preferences>): void
  /** Gives the specimen at hand a break of so many newtons and shows it on the bench, as after a capture. */
  addBreak(peakN: number, change?: Partial<BreakSummary>, result?: Partial<EvaluationResult>): BreakSummary
  /** Lays a result under a calibration beside the one in force of a break, and puts it in force. */
  addResultUnder(breakId: number, calibrationId: number): void
  /** Every call that was made, in order. */
  calls: { name: string; input: unknown }[]
  breaks: BreakRecord[]
  specimens: SpecimenSummary[]
  calibration: ScriptedCalibration
  reevaluation: ScriptedReevaluation
  studies: ScriptedStudies
  climate: ScriptedClimate
  /** Keeps a finding before some of its results changed. */
  addStaleFinding(name: string): void
}

/** A host that keeps a few records in memory and goes where the test sends it: for exact states of the page. */
export function createScriptedHost(
  options: {
    specimens?: number
    preferences?: Partial<Preferences>
    capabilities?: OutputOf<'app.info'>['capabilities']
  } = {},
): ScriptedHost {
  let preferences: Preferences = {
    ...defaultPreferences,
    operator: 'bench 1',
    capacityN: 20_000,
    nPerCount: 0.012,
    source: { kind: 'virtual', scenario: 'mixed', rateHz: 80, seed: 1, speed: 1, breaks: null, byItself: false },
    cautionsRead: true,
    ...options.preferences,
  }
  const specimens = Array.from({ length: options.specimens ?? 72 }, (_, index) => scriptedSpecimen(index))
  const revisions = new Map(
    specimens.map(({ specimenId, revision, recordedAt, by, reason, fields }): [number, Specimen[]] => [
      specimenId,
      [{ specimenId, revision, recordedAt, by, reason, fields }],
    ]),
  )
  const breaks: BreakRecord[] = []
  const climate = scriptedClimate()
  const calls: ScriptedHost['calls'] = []
  let bench: BenchState = scriptedBench(preferences, specimens)

  const archive = (): ArchiveInfo => ({
    path: '/home/bench/Breakledger/saltmarsh.breakledger',
    formatVersion: migrations.length,
    specimens: specimens.length,
    breaks: breaks.length,
    simulated: breaks.length,
    recovered: [],
    demo: true,
    own: false,
  })

  function setBench(change: Partial<BenchState>): void {
    bench = { ...bench, ...change }
    engine.emit('bench.state', bench)
  }
  function setPreferences(change: Partial<Preferences>): Preferences {
    preferences = { ...preferences, ...change }
    engine.emit('preferences.changed', preferences)
    return preferences
  }
  function recordOf(breakId: number): BreakRecord {
    const record = breaks.find(({ summary }) => summary.breakId === breakId)
    if (record === undefined)
      throw new Trouble('not-found', `There is no break ${breakId}.`, 'Go back to the list of breaks.')
    return record
  }
  function changeBreak(breakId: number, change: Partial<BreakSummary>, more: Partial<BreakRecord>): BreakRecord {
    const record = recordOf(breakId)
    const specimenBefore = record.summary.specimenId
    Object.assign(record, more, { summary: { ...record.summary, ...change } })
    for (const row of specimens)
      if (row.breakInForce?.breakId === breakId)
        row.breakInForce = record.summary.setAside === null ? record.summary : null
    if (bench.lastBreak?.breakId === breakId) setBench({ lastBreak: record.summary })
    tellOf(breakId, [specimenBefore, record.summary.specimenId], more)
    return record
  }
  /** As the archive tells it: an assessment touches no result, and only an evaluation touches the curve. */
  function tellOf(breakId: number, specimenIds: readonly (number | null)[], changed: Partial<BreakRecord>): void {
    const topics = [
      ...topicsOf('break', [breakId]),
      ...(changed.assessments === undefined ? topicsOf('result', [breakId]) : []),
      ...(changed.evaluations === undefined ? [] : topicsOf('curve', [breakId])),
    ]
    const touched = specimenIds.filter((specimenId) => specimenId !== null)
    engine.emit('records.changed', { topics: [...topics, ...topicsOf('specimen', touched)] })
  }
  function specimenOf(specimenId: number): SpecimenSummary {
    const specimen = specimens.find((row) => row.specimenId === specimenId)
    if (specimen === undefined)
      throw new Trouble('not-found', `There is no specimen ${specimenId}.`, 'Go back to the list of specimens.')
    return specimen
  }
  function next(): void {
    const waiting = specimens.filter((row) => row.breakInForce === null)
    const [first = null, second = null] = waiting.filter((row) => row.specimenId !== bench.specimen?.specimenId)
    setBench({ specimen: first, next: second, waitingSpecimens: Math.max(waiting.length - 1, 0) })
  }

  const calibration = createScriptedCalibration({
    emit: (name, payload) => engine.emit(name, payload),
    bench: () => bench,
    setBench: (change) => setBench(change),
  })
  const reevaluation = createScriptedReevaluation({
    emit: (name, payload) => engine.emit(name, payload),
    breaks: () => breaks,
  })
  const keptFindings = scriptedKeptFindings(observed(), (name, payload) => engine.emit(name, payload))
  const studies = createScriptedStudies((name, payload) => engine.emit(name, payload))
  const engine: ScriptedEngine = createScriptedEngine({
    ...calibration.handlers,
    ...scriptedReview({ recordOf, changeBreak, breaks: () => breaks, at }),
    ...reevaluation.handlers,
    ...scriptedSessions(),
    ...scriptedBreaking(),
    ...studies.handlers,
    ...scriptedFindings(),
    ...scriptedImports(() => specimens),
    ...scriptedOverview(),
    ...climate.handlers,
    ...keptFindings.handlers,
    'app.info': async () => ({
      program: 'Breakledger 0.1.0',
      host: 'direct',
      capabilities: options.capabilities ?? [],
      demo: true,
      archive: archive(),
      chainFinding: null,
      openingTrouble: null,
      preferences,
    }),
    'archive.head': async () => ({ count: 412, hash: '5e'.repeat(32), instant: '2031-05-02T09:30:00.000Z' }),
    'archive.known': async () =>
      (
        [
          ['/home/bench/.local/share/breakledger/demo.breakledger', 'demo', true],
          ['/home/bench/Breakledger/saltmarsh.breakledger', 'own', true],
          ['/media/bench/old disk/bilge and loft, boards of the second delivery.breakledger', 'own', false],
        ] as const
      ).map(([path, kind, isThere]) => {
        const isDemo = kind === 'demo'
        return { path, kind, isThere, isUsual: isDemo, isOpen: isDemo, openedAt: at(0) }
      }),
    'preferences.set': async (change) => setPreferences(change as Partial<Preferences>),
    'ports.list': async () => [
      {
        path: '/dev/ttyUSB0',
        manufacturer: 'USB serial adapter',
        serialNumber: 'A1',
        vendorId: '1a86',
        productId: '7523',
      },
      { path: '/dev/ttyACM0', manufacturer: null, serialNumber: null, vendorId: null, productId: null },
    ],
    'ports.listen': async () => ({
      lines: ['1200345,-8123', '1212845,-8119', '1225345,-8127', '1237845,-8121', '1250345,-8124'],
      bytes: 3612,
      linesPerSecond: 80,
      proposal: { name: 'columns', columns: ['time_us', 'counts'] },
      fit: 1,
      advice: 'The first column rises evenly, like a clock in microseconds; the second looks like counts.',
    }),
    'bench.state': async () => bench,
    'bench.connect': async ({ source }) => {
      setBench({ connection: { status: 'open', source, label: labelOf(source), problem: null }, phase: 'waiting' })
      return bench
    },
    'bench.disconnect': async () => {
      setBench({ connection: { status: 'closed', source: null, label: '', problem: null }, phase: 'no-signal' })
      return bench
    },
    'bench.tare': async () => {
      setBench({ tare: { offset: 12.4, sd: 1.1, readings: 80, takenAt: new Date().toISOString() } })
      return bench
    },
    'bench.arm': async ({ armed }) => {
      setBench({ armed })
      return bench
    },
    'bench.takeSpecimen': async ({ specimenId, again }) => {
      setBench({ specimen: specimenId === null ? null : specimenOf(specimenId), again })
      return bench
    },
    'bench.nextSpecimen': async () => {
      next()
      return bench
    },
    'bench.loadVirtual': async () => {
      setBench({ phase: 'loading', captureBreakId: breaks.length + 1, runningPeak: 0 })
      return bench
    },
    'specimens.list': async (query) =>
      paged(
        sortedSpecimens(
          specimens.filter((row) => specimenFits(row, query)),
          query,
        ),
        query,
      ),
    'specimens.get': async ({ specimenId }) => ({
      current: specimenOf(specimenId),
      revisions: revisions.get(specimenId) ?? [],
      breaks: breaks.map(({ summary }) => summary).filter((summary) => summary.specimenId === specimenId),
      typedResults: [],
      glued: null,
    }),
    'specimens.add': async ({ fields, by }) => {
      if (specimens.some((row) => row.fields.number === fields.number))
        throw new Trouble(
          'conflict',
          `There is a specimen ${fields.number} already.`,
          'Give this one another number, or correct the other one.',
        )
      const specimen: Specimen = {
        specimenId: specimens.length + 1,
        revision: 1,
        recordedAt: at(0),
        by,
        reason: '',
        fields,
      }
      specimens.push({
        ...specimen,
        named: namedAsWritten(fields),
        study: null,
        ageMonths: null,
        breakInForce: null,
        typedResultInForce: null,
        results: 0,
        timesBroken: 0,
        withdrawn: null,
      })
      revisions.set(specimen.specimenId, [specimen])
      engine.emit('records.changed', { topics: topicsOf('specimen', [specimen.specimenId]) })
      return specimen
    },
    'specimens.correct': async ({ specimenId, fields, by, reason }) => {
      const before = revisions.get(specimenId) ?? []
      const specimen: Specimen = { specimenId, revision: before.length + 1, recordedAt: at(90), by, reason, fields }
      revisions.set(specimenId, [...before, specimen])
      Object.assign(specimenOf(specimenId), specimen, { named: namedAsWritten(fields) })
      const ofIt = breaks.map(({ summary }) => summary).filter((summary) => summary.specimenId === specimenId)
      const breakIds = ofIt.map(({ breakId }) => breakId)
      const topics = [
        ...topicsOf('specimen', [specimenId]),
        ...topicsOf('break', breakIds),
        ...topicsOf('result', breakIds),
      ]
      engine.emit('records.changed', { topics })
      return specimen
    },
    'breaks.list': async (query) =>
      paged(
        sortedBreaks(
          breaks.map(({ summary }) => summary).filter((row) => breakFits(row, query)),
          query,
        ).map((row) => ({ ...row, block: null })),
        query,
      ),
    'breaks.get': async ({ breakId }) => recordOf(breakId),
    ...scriptedPictures((name, payload) => engine.emit(name, payload)),
    'breaks.assess': async ({ breakId, woodFailurePercent, failurePattern, note, by }) => {
      const record = recordOf(breakId)
      const assessment = {
        assessmentId: record.assessments.length + 1,
        breakId,
        recordedAt: at(60),
        by,
        woodFailurePercent,
        failurePattern,
        note,
      }
      return changeBreak(
        breakId,
        { woodFailurePercent, failurePattern, note },
        { assessments: [...record.assessments, assessment] },
      )
    },
    'breaks.setAside': async ({ breakId, by, reason, cause }) => decide(breakId, 'set-aside', by, reason, null, cause),
    'breaks.takeBack': async ({ breakId, by, reason }) => decide(breakId, 'taken-back', by, reason, null),
    'breaks.reassign': async ({ breakId, by, reason, specimenId }) =>
      decide(breakId, 'reassigned', by, reason, specimenId),
    'archive.verify': async () => ({
      sound: true,
      head: { count: 412, hash: '5'.repeat(64), instant: '2031-05-02T09:30:00.000Z' },
      ledgerEntries: 412,
      breaks: breaks.length,
      curves: breaks.length,
      samples: 51_204,
      faults: [],
    }),
    'task.cancel': async () => true,
    'demo.fill': async () => archive(),
  })

  function addResultUnder(breakId: number, calibrationId: number): void {
    const record = recordOf(breakId)
    const before = record.evaluations.at(-1)!
    const found = calibration.calibrations.find((one) => one.calibrationId === calibrationId)!
    const { result } = found.assessment
    const peakNowN = (before.result.peakN ?? 0) * 1.0023
    const evaluationId = 1000 + record.evaluations.length
    const verification = verificationOf(found, peakNowN)
    const flags = verifiedRangeFlags(result.verifiedRangeN, peakNowN)
    const scale = { kind: 'calibration', calibrationId, coefficients: result.coefficients } as const
    const after = {
      ...before,
      evaluationId,
      madeAt: at(120),
      scale,
      result: { ...before.result, peakN: peakNowN, flags },
    }
    const { areaMm2, outcome } = record.summary
    const strengthMPa = areaMm2 === null || outcome !== 'break' ? null : peakNowN / areaMm2
    changeBreak(
      breakId,
      { peakN: peakNowN, strengthMPa, scaleKind: 'calibration', verification, flags },
      {
        inForceId: evaluationId,
        evaluations: [...record.evaluations, after],
        verifications: [...record.verifications, { evaluationId, ...verification }],
      },
    )
  }

  function decide(
    breakId: number,
    kind: 'set-aside' | 'taken-back' | 'reassigned',
    by: string,
    reason: string,
    specimenId: number | null,
    cause: SetAsideCause | null = null,
  ): BreakRecord {
    const record = recordOf(breakId)
    const decision = {
      decisionId: record.decisions.length + 1,
      breakId,
      recordedAt: at(61),
      by,
      reason,
      kind,
      specimenId,
      cause,
      sample: null,
    }
    const moved =
      kind === 'reassigned'
        ? { specimenId, number: specimenId === null ? null : specimenOf(specimenId).fields.number }
        : {}
    const aside = kind === 'reassigned' ? {} : { setAside: kind === 'set-aside' ? reason : null, setAsideCause: cause }
    return changeBreak(breakId, { ...moved, ...aside }, { decisions: [...record.decisions, decision] })
  }

  const handlers = Object.fromEntries(
    Object.entries(engine.handlers).map(([name, handler]) => [
      name,
      (input: never) => {
        calls.push({ name, input })
        return (handler as (input: never) => Promise<unknown>)(input)
      },
    ]),
  ) as ScriptedEngine['handlers']

  return {
    ...engine,
    handlers,
    calls,
    breaks,
    specimens,
    calibration,
    addStaleFinding: keptFindings.addStale,
    reevaluation,
    studies,
    climate,
    bench: () => bench,
    setBench,
    preferences: () => preferences,
    setPreferences,
    addResultUnder,
    addBreak(peakN, change = {}, result = {}) {
      const record = scriptedBreak(breaks.length + 1, bench, peakN, change, result)
      breaks.push(record)
      if (bench.specimen !== null && record.summary.outcome === 'break') {
        const broken = specimenOf(bench.specimen.specimenId)
        broken.breakInForce = record.summary
        broken.timesBroken += 1
      }
      const { breakId, outcome } = record.summary
      setBench({
        phase: outcome === 'break' ? 'broke' : 'unloaded',
        lastBreak: record.summary,
        outcomeBreakId: breakId,
      })
      tellOf(record.summary.breakId, [record.summary.specimenId], { evaluations: record.evaluations })
      return record.summary
    },
  }
}

function labelOf(source: Preferences['source']): string {
  return source?.kind === 'serial' ? `${source.path} at ${source.baudRate} baud` : 'virtual amplifier: mixed'
}
