import { useEffect, useRef, useState } from 'react'
import { demoSource } from '#contract/bench/source.ts'
import { connectionWords } from '#words/bench/connectionWords.ts'
import { isUncalibrated, scaleWords } from '#words/calibration/scaleWords.ts'
import { useBench, useHost, useStore } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useArchiveSwitch } from '../../../parts/archive/useArchiveSwitch.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { PortForm } from './PortForm.tsx'
import './connect.css'

/** Where samples come from: the demo or a real port. The first screen that a stranger sees. */
export function ConnectPage() {
  const bench = useBench()
  const { forcePerCount } = useQuantities()
  const [choosingPort, setChoosingPort] = useState(bench.connection.source?.kind === 'serial')
  const fill = useAction('demo.fill')
  const connect = useAction('bench.connect')
  const disconnect = useAction('bench.disconnect')
  const info = useStore(useHost().info)
  const archive = useArchiveSwitch()
  const busy = fill.pending || connect.pending || archive.pending
  const isOpen = bench.connection.status !== 'closed'

  // The demo connects its own bench once it is filled.
  const wasClosed = useRef(!isOpen)
  const isVirtual = bench.connection.status === 'open' && bench.connection.source?.kind === 'virtual'
  useEffect(() => {
    if (wasClosed.current && isVirtual) go({ page: 'bench' })
  }, [isVirtual])

  async function startDemo(): Promise<void> {
    // The virtual bench is in the demo archive alone: a click opens that one, and never writes into the person's own.
    if (info !== null && !info.demo) return archive.switchTo({ kind: 'demo' }, { page: 'bench' })
    if ((await fill.run({})) === null) return
    if ((await connect.run({ source: demoSource })) !== null) go({ page: 'bench' })
  }

  /** A real device has its place in the person's own archive. */
  function choosePort(): void {
    if (info?.demo && info.capabilities.includes('switch-archive'))
      void archive.switchTo({ kind: 'own' }, { page: 'connect' })
    else setChoosingPort(!choosingPort)
  }

  return (
    <div className="connect">
      <h1>{isOpen ? 'Amplifier' : 'Connect an amplifier'}</h1>
      {isOpen ? (
        <div className="connect-now">
          <p>
            <strong>{connectionWords(bench.connection)}</strong> {bench.connection.label}
            <br />
            <span className={isUncalibrated(bench.scale.kind) ? 'uncalibrated-words' : ''}>
              {scaleWords(bench.scale, forcePerCount, bench.calibration?.name ?? null)}
            </span>
          </p>
          <button
            type="button"
            className="button"
            aria-disabled={disconnect.pending}
            onClick={() => void disconnect.run({})}
          >
            Disconnect
          </button>
        </div>
      ) : null}
      <div className="connect-choices" data-port={choosingPort ? '' : undefined}>
        <button type="button" className="connect-choice" aria-disabled={busy} onClick={() => void startDemo()}>
          <DemoDrawing />
          <span className="connect-choice-title">{busy ? 'Starting …' : 'Try it with a virtual bench'}</span>
          <span className="connect-choice-words">
            A simulated press, load cell and specimens. First break in a few seconds, nothing to plug in. All numbers
            are invented and stay in the demo archive.
          </span>
        </button>
        <button
          type="button"
          className="connect-choice"
          aria-expanded={choosingPort}
          aria-disabled={busy}
          onClick={choosePort}
        >
          <PortDrawing />
          <span className="connect-choice-title">Connect my load cell</span>
          <span className="connect-choice-words">
            A serial amplifier on a port of this computer. The program listens first and proposes how to read it.
            {info?.demo ? ' Opens your own archive.' : null}
          </span>
        </button>
      </div>
      <Notice
        trouble={
          archive.error ??
          fill.error ??
          connect.error ??
          disconnect.error ??
          (choosingPort ? null : bench.connection.problem)
        }
      />
      {choosingPort ? <PortForm /> : null}
      <p className="connect-caution">
        Parts can fly when a joint lets go: guard closed, eye protection on, hands clear, never above the rated load.
      </p>
    </div>
  )
}

function DemoDrawing() {
  return (
    <svg className="connect-drawing" viewBox="0 0 120 64" aria-hidden="true">
      <path className="drawing-axis" d="M8 4v52h106" />
      <path className="drawing-curve" d="M8 54h14l6-2L78 12l3 2v38l5 2h28" />
      <path className="drawing-mark" d="m78 5 7 7-7 7-7-7Z" />
    </svg>
  )
}

function PortDrawing() {
  return (
    <svg className="connect-drawing" viewBox="0 0 120 64" aria-hidden="true">
      <path className="drawing-axis" d="M22 12h16v32H22ZM38 22h16v34H38ZM14 60h48" />
      <path className="drawing-mark" d="M30 1v8m-3-3 3 3 3-3" />
      <path className="drawing-joint" d="M38 22v22" />
      <path className="drawing-curve" d="M54 50h14c9 0 9-20 18-20h8" />
      <path className="drawing-axis" d="M94 23h16v14H94ZM98 37v3M102 37v3M106 37v3" />
    </svg>
  )
}
