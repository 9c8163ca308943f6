import { type ComponentType, createElement } from 'react'
import { BenchPage } from '../pages/bench/BenchPage.tsx'
import { ConnectPage } from '../pages/bench/connect/ConnectPage.tsx'
import { ComparePage } from '../pages/breaks/compare/ComparePage.tsx'
import { BreaksPage } from '../pages/breaks/list/BreaksPage.tsx'
import { BreakPage } from '../pages/breaks/record/BreakPage.tsx'
import { CheckWeightPage } from '../pages/calibration/checkWeight/CheckWeightPage.tsx'
import { CalibrationPage } from '../pages/calibration/overview/CalibrationPage.tsx'
import { CalibrationRecordPage } from '../pages/calibration/record/CalibrationRecordPage.tsx'
import { CalibrationRunPage } from '../pages/calibration/run/CalibrationRunPage.tsx'
import { WeightsPage } from '../pages/calibration/weights/WeightsPage.tsx'
import { ClimatePage } from '../pages/findings/climate/ClimatePage.tsx'
import { NewClimatePage } from '../pages/findings/climate/NewClimatePage.tsx'
import { FindingsPage } from '../pages/findings/FindingsPage.tsx'
import { OverviewPage } from '../pages/findings/overview/OverviewPage.tsx'
import { ArchivePage } from '../pages/keeping/ArchivePage.tsx'
import { BreakingPage } from '../pages/programme/breaking/BreakingPage.tsx'
import { BreakingsPage } from '../pages/programme/breaking/BreakingsPage.tsx'
import { NewBreakingPage } from '../pages/programme/breaking/NewBreakingPage.tsx'
import { CatalogueEntryPage } from '../pages/programme/catalogue/CatalogueEntryPage.tsx'
import { CataloguePage } from '../pages/programme/catalogue/CataloguePage.tsx'
import { DuePage } from '../pages/programme/due/DuePage.tsx'
import { GlueUpPage } from '../pages/programme/glueUp/GlueUpPage.tsx'
import { GlueUpsPage } from '../pages/programme/glueUp/GlueUpsPage.tsx'
import { NewGlueUpPage } from '../pages/programme/glueUp/NewGlueUpPage.tsx'
import { LabelsPage } from '../pages/programme/labels/LabelsPage.tsx'
import { EditStudyPage } from '../pages/programme/studies/plan/EditStudyPage.tsx'
import { NewStudyPage } from '../pages/programme/studies/plan/NewStudyPage.tsx'
import { StudyPage } from '../pages/programme/studies/record/StudyPage.tsx'
import { StudiesPage } from '../pages/programme/studies/StudiesPage.tsx'
import { NewReevaluationPage } from '../pages/reevaluation/begin/NewReevaluationPage.tsx'
import { ReevaluationPage } from '../pages/reevaluation/ReevaluationPage.tsx'
import { ReevaluationsPage } from '../pages/reevaluation/ReevaluationsPage.tsx'
import { LicencesPage } from '../pages/settings/LicencesPage.tsx'
import { SettingsPage } from '../pages/settings/SettingsPage.tsx'
import { DialListPage } from '../pages/specimens/dial/DialListPage.tsx'
import { ImportPage } from '../pages/specimens/import/ImportPage.tsx'
import { SpecimensPage } from '../pages/specimens/list/SpecimensPage.tsx'
import { NewSpecimenPage } from '../pages/specimens/NewSpecimenPage.tsx'
import { SpecimenPage } from '../pages/specimens/SpecimenPage.tsx'
import type { PageName, ParametersOf, Route } from '../routes/route.ts'

/** Which component shows a page; what the address says beside its name are the component's props. */
const components: { [Page in PageName]: ComponentType<ParametersOf<Page>> } = {
  bench: BenchPage,
  connect: ConnectPage,
  breakings: BreakingsPage,
  breaking: BreakingPage,
  'new-breaking': NewBreakingPage,
  studies: StudiesPage,
  study: StudyPage,
  'new-study': NewStudyPage,
  'edit-study': EditStudyPage,
  due: DuePage,
  labels: LabelsPage,
  specimens: SpecimensPage,
  specimen: SpecimenPage,
  'new-specimen': NewSpecimenPage,
  import: ImportPage,
  readings: DialListPage,
  'glue-ups': GlueUpsPage,
  'glue-up': GlueUpPage,
  'new-glue-up': NewGlueUpPage,
  catalogue: CataloguePage,
  'catalogue-entry': CatalogueEntryPage,
  breaks: BreaksPage,
  break: BreakPage,
  compare: ComparePage,
  reevaluations: ReevaluationsPage,
  reevaluation: ReevaluationPage,
  'new-reevaluation': NewReevaluationPage,
  calibration: CalibrationPage,
  'calibration-record': CalibrationRecordPage,
  weights: WeightsPage,
  'calibration-run': CalibrationRunPage,
  'check-weight': CheckWeightPage,
  findings: FindingsPage,
  overview: OverviewPage,
  climate: ClimatePage,
  'new-climate': NewClimatePage,
  archive: ArchivePage,
  settings: SettingsPage,
  licences: LicencesPage,
}

/** The page that a place names. */
export function PageAt({ route: { page, ...parameters } }: { route: Route }) {
  // A route holds the parameters of its own page, which the compiler cannot follow through the union
  return createElement(components[page] as ComponentType<typeof parameters>, parameters)
}
