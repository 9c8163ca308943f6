import type { LineCheck } from '../lineFormats/lineCheck.ts'

const hexadecimalDigits = '0123456789ABCDEF'

/** Writes ASCII into a buffer that grows; whole numbers without making strings. */
export class LineWriter {
  private bytes = new Uint8Array(1 << 16)
  length = 0

  private room(more: number): void {
    if (this.length + more <= this.bytes.length) return
    const larger = new Uint8Array(2 * (this.length + more))
    larger.set(this.bytes.subarray(0, this.length))
    this.bytes = larger
  }

  byte(value: number): void {
    this.room(1)
    this.bytes[this.length] = value
    this.length += 1
  }

  text(value: string): void {
    this.room(value.length)
    for (let i = 0; i < value.length; i++) this.bytes[this.length + i] = value.charCodeAt(i)
    this.length += value.length
  }

  /** A whole number of at most 15 digits. */
  whole(value: number): void {
    this.room(16)
    let rest = value
    if (rest < 0) {
      this.byte(45)
      rest = -rest
    }
    const start = this.length
    do {
      const tenth = Math.floor(rest / 10)
      this.bytes[this.length] = 48 + (rest - 10 * tenth)
      this.length += 1
      rest = tenth
    } while (rest > 0)
    this.bytes.subarray(start, this.length).reverse()
  }

  at(index: number): number {
    return this.bytes[index]!
  }

  /** Turns over the highest bit of a byte, as noise on the wire does. */
  damage(index: number): void {
    this.bytes[index] = this.bytes[index]! ^ 0x80
  }

  /** Writes so many hexadecimal digits of a whole number, the last ones. */
  hexadecimal(value: number, digits: number): void {
    for (let digit = digits - 1; digit >= 0; digit--)
      this.byte(hexadecimalDigits.charCodeAt((value >> (4 * digit)) & 15))
  }

  /** What a check makes of the bytes written since `from`. */
  checkFrom(from: number, check: LineCheck): number {
    return check.of(this.bytes, from, this.length)
  }

  /** The bytes so far, as the receiver's own copy; starts afresh. */
  take(): Uint8Array {
    const taken = this.bytes.slice(0, this.length)
    this.length = 0
    return taken
  }
}
