import { useEffect, useRef } from 'react'
import { useBench, useHost, usePreferences, useStore } from '../host/hostContext.ts'
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
import { ArchivePage } from '../pages/keeping/ArchivePage.tsx'
import { NewReevaluationPage } from '../pages/reevaluation/begin/NewReevaluationPage.tsx'
import { ReevaluationPage } from '../pages/reevaluation/ReevaluationPage.tsx'
import { ReevaluationsPage } from '../pages/reevaluation/ReevaluationsPage.tsx'
import { SettingsPage } from '../pages/settings/SettingsPage.tsx'
import { NewSpecimenPage } from '../pages/specimens/NewSpecimenPage.tsx'
import { SpecimenPage } from '../pages/specimens/SpecimenPage.tsx'
import { SpecimensPage } from '../pages/specimens/SpecimensPage.tsx'
import { go, useRoute } from '../parts/routing/useRoute.ts'
import type { Route } from '../routes/route.ts'
import { applyTheme } from '../theme/applyTheme.ts'
import { Notice } from '../widgets/Notice.tsx'
import { Frame } from './Frame.tsx'

/** The program's page: waits for the host, then shows the place in the address. */
export function App() {
  const host = useHost()
  const bench = useStore(host.bench)
  const preferences = useStore(host.preferences)
  const trouble = useStore(host.trouble)
  if (bench === null || preferences === null)
    return (
      <main className="waiting-for-host">
        <h1>Breakledger</h1>
        <p aria-live="polite">Connecting to the program …</p>
        <Notice trouble={trouble} />
      </main>
    )
  return <Connected />
}

function Connected() {
  const { theme, source } = usePreferences()
  const bench = useBench()
  const route = useRoute()
  const isFirst = useRef(true)
  useEffect(() => applyTheme(theme), [theme])
  useEffect(() => {
    if (!isFirst.current) return
    isFirst.current = false
    if (route.page === 'bench' && source === null && bench.connection.status === 'closed') go({ page: 'connect' })
  }, [route.page, source, bench.connection.status])
  return <Frame route={route}>{pageOf(route)}</Frame>
}

function pageOf(route: Route) {
  switch (route.page) {
    case 'bench':
      return <BenchPage />
    case 'connect':
      return <ConnectPage />
    case 'specimens':
      return <SpecimensPage />
    case 'breaks':
      return <BreaksPage />
    case 'new-specimen':
      return <NewSpecimenPage />
    case 'specimen':
      return <SpecimenPage key={route.specimenId} specimenId={route.specimenId} />
    case 'break':
      return <BreakPage key={route.breakId} breakId={route.breakId} />
    case 'reevaluations':
      return <ReevaluationsPage />
    case 'new-reevaluation':
      return <NewReevaluationPage key={route.breakId ?? 0} breakId={route.breakId ?? null} />
    case 'reevaluation':
      return <ReevaluationPage key={route.reevaluationId} reevaluationId={route.reevaluationId} />
    case 'compare':
      return <ComparePage breakIds={route.breakIds} />
    case 'calibration':
      return <CalibrationPage />
    case 'weights':
      return <WeightsPage />
    case 'calibration-run':
      return <CalibrationRunPage />
    case 'check-weight':
      return <CheckWeightPage />
    case 'calibration-record':
      return <CalibrationRecordPage key={route.calibrationId} calibrationId={route.calibrationId} />
    case 'archive':
      return <ArchivePage />
    case 'settings':
      return <SettingsPage />
  }
}
