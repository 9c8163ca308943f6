import { type ReactNode, useState } from 'react'
import { useBench, useHost, usePreferences, useStore } from '../host/hostContext.ts'
import { useAction } from '../host/useAction.ts'
import { OverloadBanner } from '../pages/bench/live/OverloadBanner.tsx'
import { RunningMark } from '../pages/reevaluation/RunningMark.tsx'
import { ArchiveMark } from '../parts/archive/ArchiveMark.tsx'
import { OwnArchiveButton } from '../parts/archive/OwnArchiveButton.tsx'
import { ConnectionLink } from '../parts/bench/ConnectionLink.tsx'
import { useBenchSound } from '../parts/bench/useBenchSound.ts'
import { isWorthTelling } from '../parts/bench/worthTelling.ts'
import { CautionsDialog } from '../parts/cautions/CautionsDialog.tsx'
import { NumberAnswer, NumberField, useFindNumber } from '../parts/find/FindNumber.tsx'
import { useSingleKeys } from '../parts/routing/singleKeys.ts'
import { go, useLeaving } from '../parts/routing/useRoute.ts'
import { hashOf, placeOf, places, type Route } from '../routes/route.ts'
import { Choice } from '../widgets/Choice.tsx'
import { LeaveQuestion } from '../widgets/dialogs/LeaveQuestion.tsx'
import { focusHeading } from '../widgets/focus/focusPlaces.ts'
import { Keys } from '../widgets/Keys.tsx'
import { Notice } from '../widgets/Notice.tsx'
import { HelpDialog } from './HelpDialog.tsx'
import { useRouteFocus } from './useRouteFocus.ts'

const unitOptions = [
  { value: 'SI', label: 'SI', title: 'newtons, millimetres, megapascals' },
  { value: 'US', label: 'US', title: 'pounds-force, inches, psi' },
] as const

/** What stands around every page: name, places, connection, units, help, cautions, overload, and what went wrong. */
export function Frame({ route, children }: { route: Route; children: ReactNode }) {
  const host = useHost()
  const bench = useBench()
  const preferences = usePreferences()
  const link = useStore(host.link)
  const trouble = useStore(host.trouble)
  const setPreferences = useAction('preferences.set')
  useBenchSound(bench, preferences.sound)
  const [dialog, setDialog] = useState<'help' | 'cautions' | null>(null)
  const main = useRouteFocus(route)
  const leaving = useLeaving()
  const finding = useFindNumber()
  const firstCautions = !preferences.cautionsRead && route.page === 'bench' && bench.connection.status !== 'closed'

  useSingleKeys((key) => {
    const place = places.find((one) => one.key === key.toUpperCase())
    if (place !== undefined) go({ page: place.page })
    else if (key === '?') setDialog('help')
    else if (key.toLowerCase() === 'u') void setPreferences.run({ units: preferences.units === 'SI' ? 'US' : 'SI' })
    else return false
    return true
  }, window)

  return (
    <div className="frame">
      <button type="button" className="skip-link" onClick={() => main.current && focusHeading(main.current)}>
        Skip to the page
      </button>
      <header className="frame-head">
        <div className="frame-brand">
          <a className="frame-name" href={hashOf({ page: 'bench' })}>
            Breakledger
          </a>
          <ArchiveMark />
        </div>
        <nav aria-label="Pages">
          <ul>
            {places.map(({ page, name }) => (
              <li key={page}>
                <a href={hashOf({ page })} aria-current={page === placeOf(route.page) ? 'page' : undefined}>
                  {name}
                </a>
              </li>
            ))}
          </ul>
        </nav>
        <NumberField onFind={finding.find} />
        <OwnArchiveButton />
        <RunningMark route={route} />
        <ConnectionLink bench={bench} />
        <Choice
          label="Units"
          labelHidden
          options={unitOptions}
          value={preferences.units}
          onChange={(units) => void setPreferences.run({ units })}
        />
        <button type="button" className="button button-quiet frame-help" onClick={() => setDialog('help')}>
          <span className="frame-help-word">Keys </span>
          <Keys keys="?" />
        </button>
      </header>
      <OverloadBanner bench={bench} />
      {link === 'lost' ? (
        <div className="host-lost" role="alert">
          <strong>The connection to the program is lost.</strong> The page connects again by itself; nothing that was
          stored is lost. If it stays away, start Breakledger again and open the address that it gives.
        </div>
      ) : null}
      {finding.answered === null ? null : (
        <NumberAnswer answered={finding.answered} onFind={finding.find} onDismiss={finding.dismiss} />
      )}
      <div className="frame-trouble">
        <Notice trouble={finding.error} onDismiss={finding.dismiss} />
        <Notice
          trouble={trouble !== null && isWorthTelling(trouble, route, bench) ? trouble : null}
          onDismiss={() => host.trouble.set(null)}
        />
      </div>
      <main id="main" ref={main} tabIndex={-1}>
        {children}
      </main>
      {dialog === 'help' ? (
        <HelpDialog onClose={() => setDialog(null)} onCautions={() => setDialog('cautions')} />
      ) : null}
      {dialog === 'cautions' ? <CautionsDialog first={false} onClose={() => setDialog(null)} /> : null}
      {leaving.asking ? <LeaveQuestion onLeave={leaving.leave} onStay={leaving.stay} /> : null}
      {firstCautions && dialog === null ? (
        <CautionsDialog first onClose={() => void setPreferences.run({ cautionsRead: true })} />
      ) : null}
    </div>
  )
}
