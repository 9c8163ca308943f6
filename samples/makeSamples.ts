// Makes the recorded streams and curves of this folder again: node samples/makeSamples.ts
import { writeFileSync } from 'node:fs'
import { createBenchModel } from '#acquisition/virtual/benchModel.ts'
import { createVirtualAmplifier, type VirtualAmplifierOptions } from '#acquisition/virtual/virtualAmplifier.ts'

const place = (name: string) => new URL(name, import.meta.url)

function stream(name: string, options: VirtualAmplifierOptions): void {
  writeFileSync(place(name), createVirtualAmplifier(options).bytesUntil(Number.POSITIVE_INFINITY))
}

function curve(name: string, options: VirtualAmplifierOptions, column: 'force_N' | 'counts'): void {
  const bench = createBenchModel(options)
  const room = 10_000
  const samples = {
    timeUs: new Float64Array(room),
    counts: new Float64Array(room),
    sequence: new Float64Array(room),
  }
  const length = bench.fill(samples)
  const { zeroCounts, nPerCount } = bench.characteristic
  const lines = [
    `# Invented by the virtual amplifier: scenario ${options.scenario}, ${options.rateHz} Hz, seed ${options.seed}.`,
    `time_s,${column}`,
  ]
  for (let i = 0; i < length; i++) {
    const counts = samples.counts[i]!
    const value = column === 'counts' ? String(counts) : ((counts - zeroCounts) * nPerCount).toFixed(2)
    lines.push(`${(samples.timeUs[i]! / 1e6).toFixed(4)},${value}`)
  }
  writeFileSync(place(name), `${lines.join('\n')}\n`)
}

const once = { breaks: 1, restS: [3, 3] } as const

stream('brittle-80hz-checked.txt', { ...once, scenario: 'brittle', rateHz: 80, seed: 75 })
stream('stick-slip-80hz-columns.txt', {
  ...once,
  scenario: 'stick-slip',
  rateHz: 80,
  seed: 58,
  lineFormat: { name: 'columns', columns: ['time_us', 'counts'] },
})
stream('hand-pumped-80hz-number-damaged.txt', {
  ...once,
  scenario: 'hand-pumped',
  rateHz: 80,
  seed: 75,
  lineFormat: { name: 'number', columns: [] },
  damagedShare: 0.01,
})
curve('pop-in-80hz.csv', { ...once, scenario: 'pop-in', rateHz: 80, seed: 75 }, 'force_N')
curve('unloading-10hz.csv', { ...once, scenario: 'unloading', rateHz: 10, seed: 48 }, 'counts')
