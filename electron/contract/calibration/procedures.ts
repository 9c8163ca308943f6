// Held by tests/contract/procedures.spec.ts.
import * as z from 'zod'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { deed, question } from '../procedure.ts'
import { topicsOf } from '../topics.ts'
import { finite, id, isoDate, note, nothing, reason, words } from '../values.ts'
import { calibration } from './calibration.ts'
import { calibrationPlan } from './calibrationPlan.ts'
import { calibrationDecision, calibrationDrift, calibrationSummary } from './calibrationRecords.ts'
import { assessmentChoices, brokenOffRoutine, routineAssessment, routineState } from './calibrationRoutine.ts'
import { checkHistory, checkState } from './checkWeight.ts'
import { gravityChoice } from './loading.ts'
import { keptWeights, weightEntry } from './weight.ts'

const calibrationId = z.strictObject({ calibrationId: id })

/** Weights, the guided calibration, its records, and the check weight. */
export const calibrationProcedures = {
  'weights.list': question({ input: nothing, output: keptWeights, reads: () => ['weights'] }),
  /** The whole set at once; the sets before it stay in the archive. */
  'weights.save': deed({ input: z.strictObject({ weights: z.array(weightEntry), by: words }), output: keptWeights }),

  'calibration.state': question({ input: nothing, output: routineState, reads: () => [] }),
  'calibration.begin': deed({ input: z.strictObject({ plan: calibrationPlan, by: words }), output: routineState }),
  /**
   * The person has done what the phase asks for. preloading: one preload is done. zero, step: begins to wait and to
   * average; answers at once, and the event `calibration.state` tells how it goes on.
   */
  'calibration.goOn': deed({ input: nothing, output: routineState }),
  /** Gives up the reading that is being waited for; its position stays at hand. */
  'calibration.stopWaiting': deed({ input: nothing, output: routineState }),
  /** Goes to a position again; its next reading replaces the one it had, which is kept and marked. */
  'calibration.repeat': deed({ input: z.strictObject({ position: z.int().nonnegative() }), output: routineState }),
  /** Undo: goes back to the position taken or skipped last. */
  'calibration.back': deed({ input: nothing, output: routineState }),
  /** Leaves out the position at hand (in preloading: the preloads that are left). */
  'calibration.skip': deed({ input: nothing, output: routineState }),
  /** run: the readings of the run at hand are marked and the run begins anew. routine: all ends here; readings are kept. */
  'calibration.breakOff': deed({
    input: z.strictObject({ what: z.enum(['run', 'routine']), reason }),
    output: routineState,
  }),
  /** The person agrees that the reading falls while the force rises. */
  'calibration.acceptInverted': deed({ input: z.strictObject({ accepted: z.boolean() }), output: routineState }),
  /** Judges the readings so far; may be asked again and again. */
  'calibration.assess': question({ input: assessmentChoices, output: routineAssessment, reads: () => [] }),
  /** Stores the readings with this judgement and ends the routine. Does not put it in force. */
  'calibration.save': deed({
    input: z.strictObject({
      choices: assessmentChoices,
      name: words.min(1),
      by: words,
      dueOn: isoDate.nullable(),
      note,
      temperatureEndC: finite.nullable(),
    }),
    output: calibration,
  }),

  /** Newest first. */
  'calibrations.list': question({
    input: nothing,
    output: z.strictObject({ rows: z.array(calibrationSummary), unreadable: unreadableRecords }),
    reads: () => ['calibrations'],
  }),
  'calibrations.get': question({
    input: calibrationId,
    output: z.strictObject({
      calibration,
      inForce: z.boolean(),
      decisions: z.array(calibrationDecision),
      unreadable: unreadableRecords,
    }),
    reads: ({ calibrationId }) => topicsOf('calibration', [calibrationId]),
  }),
  /** Oldest first: drift between calibrations, every decision, and routines that were broken off. */
  'calibrations.history': question({
    input: nothing,
    output: z.strictObject({
      drift: z.array(calibrationDrift),
      decisions: z.array(calibrationDecision),
      brokenOff: z.array(brokenOffRoutine),
      unreadable: unreadableRecords,
    }),
    reads: () => ['calibrations', 'routines'],
  }),
  /**
   * null: no calibration; forces are uncalibrated from now on. Right after a routine or a check the bench goes over to it
   * once the cell was seen empty, because it takes its zero anew then. Refused while one of them runs.
   */
  'calibrations.putInForce': deed({
    input: z.strictObject({ calibrationId: id.nullable(), by: words.min(1), reason }),
    output: calibrationDecision,
  }),

  'checkWeight.state': question({ input: nothing, output: checkState, reads: () => [] }),
  /** gravity null: as in the calibration in force. */
  'checkWeight.begin': deed({
    input: z.strictObject({
      weights: z.array(words).min(1),
      gravity: gravityChoice.nullable().default(null),
      by: words,
    }),
    output: checkState,
  }),
  'checkWeight.goOn': deed({ input: nothing, output: checkState }),
  'checkWeight.stop': deed({ input: nothing, output: checkState }),
  /** One entry for each weight that was checked under the calibration (null: the one in force). */
  'checkWeight.history': question({
    input: z.strictObject({ calibrationId: id.nullable().default(null) }),
    output: z.strictObject({ rows: z.array(checkHistory), unreadable: unreadableRecords }),
    reads: ({ calibrationId }) => [
      'checks',
      ...(calibrationId === null ? (['calibrations'] as const) : topicsOf('calibration', [calibrationId])),
    ],
  }),
}
