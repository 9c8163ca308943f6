import { Field, SelectField } from '../../../widgets/Field.tsx'
import { LineFormatFields } from './LineFormatFields.tsx'
import { listenS, type Port } from './usePort.ts'

const baudRates = [9600, 19200, 38400, 57600, 115200, 230400, 460800, 921600, 1000000]

/** A port among those found, its speed, and how its lines are read. `asked`: what is missing is said. */
export function PortFields({ port, asked }: { port: Port; asked: boolean }) {
  return (
    <section aria-labelledby="port-title">
      <h2 id="port-title">Port</h2>
      {port.found.length === 0 ? (
        <p className="prose">
          {port.looking
            ? 'Looking for ports …'
            : 'No serial port was found. Plug in the amplifier and look again, or write the port’s path.'}
        </p>
      ) : null}
      <Field
        label="Path"
        list="ports"
        value={port.chosen}
        placeholder="/dev/ttyUSB0 or COM3"
        onChange={(event) => port.setPath(event.currentTarget.value)}
        error={asked && port.chosen === '' ? 'Choose a port or write its path.' : null}
        hint={port.found.find((one) => one.path === port.chosen)?.manufacturer ?? undefined}
      />
      <datalist id="ports">
        {port.found.map(({ path, manufacturer }) => (
          <option key={path} value={path}>
            {manufacturer ?? ''}
          </option>
        ))}
      </datalist>
      {port.found.length > 1 ? (
        <div className="chips">
          {port.found.slice(0, 6).map(({ path }) => (
            <button type="button" className="chip" key={path} onClick={() => port.setPath(path)}>
              {path}
            </button>
          ))}
        </div>
      ) : null}
      <div className="port-line">
        <SelectField
          label="Baud rate"
          value={String(port.baudRate)}
          onChange={(event) => port.setBaudRate(Number(event.currentTarget.value))}
        >
          {baudRates.map((rate) => (
            <option key={rate} value={rate}>
              {rate}
            </option>
          ))}
        </SelectField>
        <button type="button" className="button" aria-disabled={port.lookingAgain} onClick={port.lookAgain}>
          Look again
        </button>
        <button
          type="button"
          className="button"
          aria-disabled={port.chosen === '' || port.listening}
          onClick={() => void port.hear()}
        >
          {port.listening ? `Listening ${listenS} s …` : 'Listen'}
        </button>
      </div>
      <LineFormatFields value={port.lineFormat} onChange={port.setLineFormat} />
    </section>
  )
}
