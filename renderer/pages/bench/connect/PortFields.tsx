import { Field, SelectField } from '../../../widgets/Field.tsx'
import type { FoundPorts } from './usePorts.ts'

const baudRates = [9600, 19200, 38400, 57600, 115200, 230400, 460800, 921600, 1000000]

/** Which port, and how fast; ports can be looked for, and one listened to. */
export function PortFields({
  found,
  path,
  pathError,
  baudRate,
  listening,
  onPath,
  onBaudRate,
  onListen,
}: {
  found: FoundPorts
  path: string
  pathError: string | null
  baudRate: number
  /** What the button says while it listens; null: it does not. */
  listening: string | null
  onPath(path: string): void
  onBaudRate(baudRate: number): void
  onListen(): void
}) {
  const { ports } = found
  return (
    <>
      {ports.length === 0 ? (
        <p className="prose">
          {found.pending
            ? 'Looking for ports …'
            : 'No serial port was found. Plug in the amplifier and look again, or write the port’s path.'}
        </p>
      ) : null}
      <Field
        label="Path"
        list="ports"
        value={path}
        placeholder="/dev/ttyUSB0 or COM3"
        onChange={(event) => onPath(event.currentTarget.value)}
        error={pathError}
        hint={ports.find((port) => port.path === path)?.manufacturer ?? undefined}
      />
      <datalist id="ports">
        {ports.map((port) => (
          <option key={port.path} value={port.path}>
            {port.manufacturer ?? ''}
          </option>
        ))}
      </datalist>
      {ports.length > 1 ? (
        <div className="chips">
          {ports.slice(0, 6).map((port) => (
            <button type="button" className="chip" key={port.path} onClick={() => onPath(port.path)}>
              {port.path}
            </button>
          ))}
        </div>
      ) : null}
      <div className="port-line">
        <SelectField
          label="Baud rate"
          value={String(baudRate)}
          onChange={(event) => onBaudRate(Number(event.currentTarget.value))}
        >
          {baudRates.map((rate) => (
            <option key={rate} value={rate}>
              {rate}
            </option>
          ))}
        </SelectField>
        <button type="button" className="button" disabled={found.pending} onClick={found.lookAgain}>
          Look again
        </button>
        <button type="button" className="button" disabled={path === '' || listening !== null} onClick={onListen}>
          {listening ?? 'Listen'}
        </button>
      </div>
    </>
  )
}
