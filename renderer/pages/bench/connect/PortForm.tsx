import { type FormEvent, useState } from 'react'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { ratedLoadWords } from '#words/bench/cautions.ts'
import { writeTyped } from '#words/units/numbers.ts'
import { useBench, usePreferences } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { readCapacity, readScale } from '../../../parts/bench/scaleForm.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { Field } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { HeardLines } from './HeardLines.tsx'
import { LineFormatFields } from './LineFormatFields.tsx'
import { PortFields } from './PortFields.tsx'
import { usePorts } from './usePorts.ts'

const listenS = 3

/** A port, its speed, what it sends, and what a count is worth. */
export function PortForm() {
  const bench = useBench()
  const preferences = usePreferences()
  const { force } = useQuantities()
  const before = preferences.source?.kind === 'serial' ? preferences.source : null
  const [path, setPath] = useState(before?.path ?? '')
  const [baudRate, setBaudRate] = useState(before?.baudRate ?? 115200)
  const [lineFormat, setLineFormat] = useState<LineFormatChoice>(before?.lineFormat ?? { name: 'number', columns: [] })
  const [capacity, setCapacity] = useState(writeTyped(preferences.capacityN, force.factor))
  const [scale, setScale] = useState(preferences.nPerCount === null ? '' : String(preferences.nPerCount))
  const [asked, setAsked] = useState(false)
  const found = usePorts()
  const listen = useAction('ports.listen')
  const setPreferences = useAction('preferences.set')
  const connect = useAction('bench.connect')

  const chosen = path === '' ? (found.ports[0]?.path ?? '') : path
  const capacityRead = readCapacity(capacity, force.factor, force.unit)
  const scaleRead = readScale(scale)

  async function hear(): Promise<void> {
    const heard = await listen.run({ path: chosen, baudRate, seconds: listenS })
    if (heard?.proposal) setLineFormat(heard.proposal)
  }

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    if (chosen === '' || 'error' in capacityRead || 'error' in scaleRead) return
    if ((await setPreferences.run({ ...capacityRead, ...scaleRead })) === null) return
    const source = { kind: 'serial', path: chosen, baudRate, lineFormat } as const
    if ((await connect.run({ source })) !== null) go({ page: 'bench' })
  }

  return (
    <form className="form port-form" noValidate onSubmit={(event) => void submit(event)}>
      <div className="port-columns">
        <section aria-labelledby="port-title">
          <h2 id="port-title">Port</h2>
          <PortFields
            found={found}
            path={chosen}
            pathError={asked && chosen === '' ? 'Choose a port or write its path.' : null}
            baudRate={baudRate}
            listening={listen.pending ? `Listening ${listenS} s …` : null}
            onPath={setPath}
            onBaudRate={setBaudRate}
            onListen={() => void hear()}
          />
          <LineFormatFields value={lineFormat} onChange={setLineFormat} />
        </section>
        <section aria-labelledby="worth-title">
          <h2 id="worth-title">What a count is worth</h2>
          <Field
            label={ratedLoadWords}
            unit={force.unit}
            inputMode="decimal"
            value={capacity}
            onChange={(event) => setCapacity(event.currentTarget.value)}
            error={asked && 'error' in capacityRead ? capacityRead.error : null}
            hint="The program warns above 90 % and sounds an alarm above 100 %."
          />
          <Field
            label="Scale"
            unit="N per count"
            inputMode="decimal"
            value={scale}
            onChange={(event) => setScale(event.currentTarget.value)}
            error={asked && 'error' in scaleRead ? scaleRead.error : null}
            hint="Leave empty if not known: the curve is then kept in counts. A typed scale is marked uncalibrated wherever force is shown."
          />
          <HeardLines heard={listen.value} pending={listen.pending} />
        </section>
      </div>
      <Notice
        trouble={found.error ?? listen.error ?? setPreferences.error ?? connect.error ?? bench.connection.problem}
      />
      <div className="form-buttons">
        <button type="submit" className="button button-primary button-large" disabled={connect.pending}>
          {connect.pending ? 'Connecting …' : 'Connect'}
        </button>
      </div>
    </form>
  )
}
