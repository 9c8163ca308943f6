import { rejectedLinesKind, sessionKind } from '../bench/sessions.ts'
import { assessmentKind } from '../breaks/assessments.ts'
import { breakKind } from '../breaks/breakHeaders.ts'
import { decisionKind } from '../breaks/decisions.ts'
import { evaluationKind } from '../breaks/evaluations.ts'
import { calibrationDecisionKind } from '../calibration/calibrationDecisions.ts'
import { routineEndKind, routineKind, routineReadingKind } from '../calibration/calibrationRoutines.ts'
import { calibrationKind } from '../calibration/calibrations.ts'
import { checkWeightKind } from '../calibration/checkWeights.ts'
import { weightSetKind } from '../calibration/weightSets.ts'
import { catalogueDecisionKind, catalogueEntryKind } from '../catalogue/catalogueKinds.ts'
import { formatKind } from '../core/formatKind.ts'
import type { LedgeredKind } from '../core/recordKind.ts'
import { climateDecisionKind, climateImportKind } from '../findings/climateKinds.ts'
import { keptFindingKind } from '../findings/keptFindings.ts'
import {
  breakingSessionEventKind,
  breakingSessionKind,
  gluedBlockKind,
  glueUpCorrectionKind,
  glueUpKind,
} from '../programme/sessionKinds.ts'
import { blockKind, labelKind, pullDecisionKind, studyKind } from '../programme/studyKinds.ts'
import { reevaluationDecisionKind, reevaluationEndKind, reevaluationKind } from '../reevaluation/reevaluationKinds.ts'
import { attachmentKind, woodPictureKind } from '../specimens/pictureKinds.ts'
import { specimenKind } from '../specimens/specimens.ts'
import { importRunKind, typedResultDecisionKind, typedResultKind } from '../specimens/typedResultKinds.ts'
import { withdrawalKind } from '../specimens/withdrawals.ts'

/** Every kind of record there is; a test finds one that is declared and not named here. */
export const recordKinds: readonly LedgeredKind[] = [
  formatKind,
  specimenKind,
  sessionKind,
  rejectedLinesKind,
  breakKind,
  evaluationKind,
  assessmentKind,
  decisionKind,
  weightSetKind,
  routineKind,
  routineReadingKind,
  routineEndKind,
  calibrationKind,
  calibrationDecisionKind,
  checkWeightKind,
  reevaluationKind,
  reevaluationEndKind,
  reevaluationDecisionKind,
  catalogueEntryKind,
  catalogueDecisionKind,
  studyKind,
  blockKind,
  labelKind,
  pullDecisionKind,
  glueUpKind,
  glueUpCorrectionKind,
  gluedBlockKind,
  breakingSessionKind,
  breakingSessionEventKind,
  importRunKind,
  typedResultKind,
  typedResultDecisionKind,
  attachmentKind,
  woodPictureKind,
  withdrawalKind,
  climateImportKind,
  climateDecisionKind,
  keptFindingKind,
]
