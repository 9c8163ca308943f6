import { type FormEvent, useState } from 'react'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { ratedLoadWords } from '#words/bench/cautions.ts'
import { writeTyped } from '#words/units/numbers.ts'
import { useBench, usePreferences } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { readCapacity, readScale } from '../../../parts/bench/scaleForm.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { HeardLines } from './HeardLines.tsx'
import { LineFormatFields } from './LineFormatFields.tsx'

const baudRates = [9600, 19200, 38400, 57600, 115200, 230400, 460800, 921600, 1000000]
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
  const [listRound, setListRound] = useState(0)
  const ports = useAction('ports.list')
  const firstPorts = useAnswer('ports.list', {})
  const listen = useAction('ports.listen')
  const setPreferences = useAction('preferences.set')
  const connect = useAction('bench.connect')

  const found = (listRound === 0 ? firstPorts.value : ports.value) ?? []
  const chosen = path === '' ? (found[0]?.path ?? '') : path
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
          {found.length === 0 ? (
            <p className="prose">
              {firstPorts.pending || ports.pending
                ? 'Looking for ports …'
                : 'No serial port was found. Plug in the amplifier and look again, or write the port’s path.'}
            </p>
          ) : null}
          <Field
            label="Path"
            list="ports"
            value={chosen}
            placeholder="/dev/ttyUSB0 or COM3"
            onChange={(event) => setPath(event.currentTarget.value)}
            error={asked && chosen === '' ? 'Choose a port or write its path.' : null}
            hint={found.find((port) => port.path === chosen)?.manufacturer ?? undefined}
          />
          <datalist id="ports">
            {found.map((port) => (
              <option key={port.path} value={port.path}>
                {port.manufacturer ?? ''}
              </option>
            ))}
          </datalist>
          {found.length > 1 ? (
            <div className="chips">
              {found.slice(0, 6).map((port) => (
                <button type="button" className="chip" key={port.path} onClick={() => setPath(port.path)}>
                  {port.path}
                </button>
              ))}
            </div>
          ) : null}
          <div className="port-line">
            <SelectField
              label="Baud rate"
              value={String(baudRate)}
              onChange={(event) => setBaudRate(Number(event.currentTarget.value))}
            >
              {baudRates.map((rate) => (
                <option key={rate} value={rate}>
                  {rate}
                </option>
              ))}
            </SelectField>
            <button
              type="button"
              className="button"
              disabled={ports.pending}
              onClick={() => {
                setListRound(listRound + 1)
                void ports.run({})
              }}
            >
              Look again
            </button>
            <button
              type="button"
              className="button"
              disabled={chosen === '' || listen.pending}
              onClick={() => void hear()}
            >
              {listen.pending ? `Listening ${listenS} s …` : 'Listen'}
            </button>
          </div>
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
        trouble={
          firstPorts.error ??
          ports.error ??
          listen.error ??
          setPreferences.error ??
          connect.error ??
          bench.connection.problem
        }
      />
      <div className="form-buttons">
        <button type="submit" className="button button-primary button-large" disabled={connect.pending}>
          {connect.pending ? 'Connecting …' : 'Connect'}
        </button>
      </div>
    </form>
  )
}
