import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { createCheckedDecoder } from '#acquisition/lineFormats/checkedLine.ts'
import { lineChecks } from '#acquisition/lineFormats/lineCheck.ts'

const ascii = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))
const notes = (name: string) => fileURLToPath(new URL(`../../../firmware-notes/${name}`, import.meta.url))
const compiles = spawnSync('cc', ['--version']).status === 0

describe('a line with a check value', () => {
  it.each([
    ['checked', /\$BL,[\d,-]+\*[0-9A-F]{2}/g],
    ['crc', /\$BC,[\d,-]+\*[0-9A-F]{4}/g],
  ] as const)('is right in every example of the notes on firmware, as %s', (name, example) => {
    const examples = readFileSync(notes('README.md'), 'utf8').match(example) ?? []
    expect(examples.length).toBeGreaterThanOrEqual(2)
    for (const line of examples) {
      const decoder = createCheckedDecoder(lineChecks[name])
      expect(decoder.decode(ascii(`${line}\n`), 0)).toBe(line.length)
      expect(decoder.decode(ascii(`${line}\r\n`), 0)).toBe(line.length + 1)
    }
  })

  it.each(['$BC,0,0,5*e787', '$BC,0,0,-5*E6E5', '$BC,4294967295,4294967295,-8388608*0953'])(
    'with a CRC is read: %s',
    (line) => {
      // Check values: Python 3, binascii.crc_hqx(data, 0xFFFF).
      const decoder = createCheckedDecoder(lineChecks.crc)
      expect(decoder.decode(ascii(`${line}\n`), 0)).toBe(line.length)
      expect([decoder.sequence, decoder.deviceTimeUs, decoder.value].join()).toBe(line.slice(4, line.indexOf('*')))
    },
  )

  it.each([
    ['a wrong digit', '$BC,0,0,6*E787'],
    ['a wrong check value', '$BC,0,0,5*E788'],
    ['two digits only, as the other format has', '$BC,0,0,5*87'],
    ['three digits', '$BC,0,0,5*E78'],
    ['five digits', '$BC,0,0,5*E7870'],
    ['a digit that is none', '$BC,0,0,5*E78G'],
    ['the letters of the other format', '$BL,0,0,5*E787'],
    ['a count that is not whole', '$BC,0,0,5.0*7BF0'],
    ['a number more', '$BC,0,0,5,5*4D37'],
    ['nothing', '$BC'],
  ])('with a CRC is rejected for %s', (_what, line) => {
    expect(createCheckedDecoder(lineChecks.crc).decode(ascii(`${line}\n`), 0)).toBe(-1)
  })

  it.runIf(compiles)('is written by the reference firmware as it is read', () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-firmware-'))
    try {
      const source = join(folder, 'lines.c')
      writeFileSync(
        source,
        `#include <stdio.h>
#include "${notes('firmware/crc_line.h')}"
static void put(uint32_t sequence, uint32_t microseconds, int32_t counts)
{
    char line[CRC_LINE_ROOM];
    fwrite(line, 1, crc_line(line, sequence, microseconds, counts), stdout);
}
int main(void)
{
    put(0, 0, 0);
    put(42, 1234567, -8123);
    put(4294967295u, 4294967295u, -8388608);
    put(7, 4294967295u, 8388607);
    return 0;
}
`,
      )
      execFileSync('cc', ['-std=gnu99', '-Wall', '-Wextra', '-Werror', '-o', join(folder, 'lines'), source])
      const lines = execFileSync(join(folder, 'lines'), { encoding: 'latin1' }).split('\n').slice(0, -1)
      const decoder = createCheckedDecoder(lineChecks.crc)
      const read = lines.map((line) => {
        expect(decoder.decode(ascii(`${line}\n`), 0)).toBe(line.length)
        return [decoder.sequence, decoder.deviceTimeUs, decoder.value]
      })
      expect(read).toEqual([
        [0, 0, 0],
        [42, 1_234_567, -8123],
        [4_294_967_295, 4_294_967_295, -8_388_608],
        [7, 4_294_967_295, 8_388_607],
      ])
      expect(Math.max(...lines.map((line) => line.length + 1))).toBeLessThanOrEqual(41)
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})
