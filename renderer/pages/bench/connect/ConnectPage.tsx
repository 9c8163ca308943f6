import { useState } from 'react'
import { demoSource } from '#contract/bench/source.ts'
import { connectionWords } from '#words/bench/connectionWords.ts'
import { isUncalibrated, scaleWords } from '#words/calibration/scaleWords.ts'
import { useBench } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { PortForm } from './PortForm.tsx'
import './connect.css'

/** Where samples come from: the demo or a real port. The first screen that a stranger sees. */
export function ConnectPage() {
  const bench = useBench()
  const [choosingPort, setChoosingPort] = useState(bench.connection.source?.kind === 'serial')
  const fill = useAction('demo.fill')
  const connect = useAction('bench.connect')
  const disconnect = useAction('bench.disconnect')
  const info = useAction('app.info')
  const busy = fill.pending || connect.pending || info.pending
  const isOpen = bench.connection.status !== 'closed'

  async function startDemo(): Promise<void> {
    const now = await info.run({})
    if (now === null) return
    const { specimens, demo } = now.archive
    if ((specimens === 0 || demo) && (await fill.run({})) === null) return
    if ((await connect.run({ source: demoSource })) !== null) go({ page: 'bench' })
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
              {scaleWords(bench.scale, bench.calibration?.name ?? null)}
            </span>
          </p>
          <button
            type="button"
            className="button"
            disabled={disconnect.pending}
            onClick={() => void disconnect.run({})}
          >
            Disconnect
          </button>
        </div>
      ) : null}
      <div className="connect-choices" data-port={choosingPort ? '' : undefined}>
        <button type="button" className="connect-choice" disabled={busy} onClick={() => void startDemo()}>
          <DemoDrawing />
          <span className="connect-choice-title">{busy ? 'Starting …' : 'Try it with a virtual bench'}</span>
          <span className="connect-choice-words">
            A simulated press, load cell and specimens. First break in a few seconds, nothing to plug in. All numbers
            are invented.
          </span>
        </button>
        <button
          type="button"
          className="connect-choice"
          aria-expanded={choosingPort}
          disabled={busy}
          onClick={() => setChoosingPort(!choosingPort)}
        >
          <PortDrawing />
          <span className="connect-choice-title">Connect my load cell</span>
          <span className="connect-choice-words">
            A serial amplifier on a port of this computer. The program listens first and proposes how to read it.
          </span>
        </button>
      </div>
      <Notice
        trouble={
          info.error ??
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
