import type { BreakSummary } from '#contract/breaks/break.ts'
import type { BreakingMember } from '#contract/programme/breakingProcedures.ts'
import { type SpecimenFields, specimenFields } from '#contract/specimens/specimen.ts'
import { namedAsWritten } from './scripted/namedAsWritten.ts'

const at = '2031-06-02T09:30:00.000Z'

/** A break as lists show it, with a strength on 600 mm2. */
export function memberBreak(breakId: number, strengthMPa: number, change: Partial<BreakSummary> = {}): BreakSummary {
  return {
    ...{ breakId, startedAt: at, ending: 'complete', specimenId: breakId, number: null, adhesive: null },
    ...{ jointType: null, exposure: null, areaMm2: 600, outcome: 'break', peakN: 600 * strengthMPa, overruled: null },
    ...{ strengthMPa, samplingBoundPercent: 0.1, flags: [], scaleKind: 'calibration', verification: null },
    ...{ woodFailurePercent: 50, failurePattern: null, note: '', setAside: null, setAsideCause: null },
    ...{ resultsOfSpecimen: 1, demo: false, simulated: false },
    ...change,
  }
}

/** A specimen of a session that broke at a strength, or has not been broken (null). */
export function breakingMember(
  specimenId: number,
  strengthMPa: number | null,
  change: Partial<BreakingMember> & { fields?: Partial<SpecimenFields>; summary?: Partial<BreakSummary> } = {},
): BreakingMember {
  const { fields, summary: changed, ...rest } = change
  const whole = specimenFields.parse({ number: `B-${specimenId}`, adhesive: 'casein C1', areaMm2: 600, ...fields })
  const summary = strengthMPa === null ? null : memberBreak(specimenId, strengthMPa, changed)
  return {
    specimen: {
      ...{ specimenId, revision: 1, recordedAt: at, by: '', reason: '' },
      ...{ fields: whole, named: namedAsWritten(whole), study: null, ageMonths: null },
      breakInForce: summary?.setAside === null ? summary : null,
      typedResultInForce: null,
      withdrawn: null,
      results: summary?.setAside === null ? 1 : 0,
      timesBroken: summary === null ? 0 : 1,
    },
    ...{ studyId: 1, ageMonths: 3, skipped: null, spares: 0 },
    state: summary === null ? 'waiting' : 'broken',
    breaks: summary === null ? [] : [{ summary, events: [] }],
    ...rest,
  }
}
