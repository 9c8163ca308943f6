import { useEffect, useRef } from 'react'
import { useBench, useHost, usePreferences, useStore } from '#renderer/host/hostContext.ts'
import { ArchivePage } from './pages/archive/ArchivePage.tsx'
import { BenchPage } from './pages/bench/BenchPage.tsx'
import { BreakPage } from './pages/break/BreakPage.tsx'
import { CalibrationPage } from './pages/calibration/CalibrationPage.tsx'
import { CalibrationRecordPage } from './pages/calibrationRecord/CalibrationRecordPage.tsx'
import { CalibrationRunPage } from './pages/calibrationRun/CalibrationRunPage.tsx'
import { CheckWeightPage } from './pages/checkWeight/CheckWeightPage.tsx'
import { ComparePage } from './pages/compare/ComparePage.tsx'
import { ConnectPage } from './pages/connect/ConnectPage.tsx'
import { Frame } from './pages/frame/Frame.tsx'
import type { Route } from './pages/frame/route.ts'
import { go, useRoute } from './pages/frame/useRoute.ts'
import { BreaksPage } from './pages/records/BreaksPage.tsx'
import { NewSpecimenPage } from './pages/records/NewSpecimenPage.tsx'
import { SpecimenPage } from './pages/records/SpecimenPage.tsx'
import { SpecimensPage } from './pages/records/SpecimensPage.tsx'
import { NewReevaluationPage } from './pages/reevaluation/NewReevaluationPage.tsx'
import { ReevaluationPage } from './pages/reevaluation/ReevaluationPage.tsx'
import { ReevaluationsPage } from './pages/reevaluation/ReevaluationsPage.tsx'
import { SettingsPage } from './pages/settings/SettingsPage.tsx'
import { WeightsPage } from './pages/weights/WeightsPage.tsx'
import { applyTheme } from './theme/applyTheme.ts'
import { Notice } from './widgets/Notice.tsx'
import { QuantitiesContext, quantitiesIn } from './widgets/quantities.ts'

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
  const { units, theme, source } = usePreferences()
  const bench = useBench()
  const route = useRoute()
  const isFirst = useRef(true)
  useEffect(() => applyTheme(theme), [theme])
  useEffect(() => {
    if (!isFirst.current) return
    isFirst.current = false
    if (route.page === 'bench' && source === null && bench.connection.status === 'closed') go({ page: 'connect' })
  }, [route.page, source, bench.connection.status])
  return (
    <QuantitiesContext value={quantitiesIn(units)}>
      <Frame route={route}>{pageOf(route)}</Frame>
    </QuantitiesContext>
  )
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
