import type { Trouble } from '#contract/errors.ts'

/** What a source of bytes tells its listener. Arrival times are the clock's nowS(). */
export type ByteListener = {
  bytes(chunk: Uint8Array, arrivalS: number): void
  /** The device went away by itself. Nothing more arrives until `restored`. */
  lost(trouble: Trouble): void
  /** The device came back (only sources that reconnect by themselves). */
  restored(): void
  /** The source has nothing more to give (a recording that was played, a virtual run that is over). */
  ended(): void
}

/** Anything that gives the bytes of an amplifier: a serial port, the virtual amplifier, a recording. */
export type ByteSource = {
  /** For people: "/dev/ttyUSB0 at 115200 baud", "virtual amplifier: brittle". */
  readonly label: string
  /** Rejects with a Trouble when the device cannot be had. */
  open(listener: ByteListener): Promise<void>
  /** After it resolves the listener is not called again. May be called at any time, more than once. */
  close(): Promise<void>
}
