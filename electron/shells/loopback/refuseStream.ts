// Held by tests/shells/loopback/server.spec.ts.
import { STATUS_CODES } from 'node:http'
import type { Duplex } from 'node:stream'
import { pageHeaders } from '../page/pageHeaders.ts'

/** Answers on a bare connection, where there is no response yet, with why not; the connection ends. */
export function refuseStream(stream: Duplex, status: number, because: string): void {
  if (!stream.writable) return void stream.destroy()
  const body = `${because}\n`
  const headers = {
    ...pageHeaders([]),
    Connection: 'close',
    'Content-Type': 'text/plain; charset=utf-8',
    'Content-Length': String(Buffer.byteLength(body)),
  }
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}`)
  stream.end(`HTTP/1.1 ${status} ${STATUS_CODES[status] ?? 'Refused'}\r\n${lines.join('\r\n')}\r\n\r\n${body}`)
}
