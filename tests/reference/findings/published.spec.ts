import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'
import { publishedStudies } from './publishedStudies.ts'

const samples = fileURLToPath(new URL('../../../samples/published/', import.meta.url))
const findings = async (table: string, ...words: string[]) =>
  (await runWords(commands, ['findings', '--table', table, '--json', ...words])).lines
let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'breakledger-published-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

const at = (line: object, path: string): unknown =>
  path.split('.').reduce((value, key) => (value as Record<string, unknown>)[key]!, line as unknown)

/** Whether a number, rounded to as many decimals as were printed, is what was printed. */
function isPrinted(value: unknown, printed: string): boolean {
  const decimals = printed.split('.')[1]?.length ?? 0
  return typeof value === 'number' && Math.abs(value - Number(printed)) <= 0.500001 * 10 ** -decimals
}

describe('findings about a published table', () => {
  it.each(publishedStudies)('$file prints what was published: $source', async ({ file, words, says }) => {
    const lines = await findings(join(samples, file), ...words)
    for (const { line, numbers } of says) {
      const found = lines.filter((one) => Object.entries(line).every(([key, value]) => one[key] === value))
      expect(found, JSON.stringify(line)).toHaveLength(1)
      for (const [path, printed] of Object.entries(numbers)) {
        const value = at(found[0]!, path)
        const pairs =
          typeof printed === 'string'
            ? [[value, printed] as const]
            : printed.map((one, i) => [at(found[0]!, `${path}.${i}`), one] as const)
        for (const [one, other] of pairs)
          expect(isPrinted(one, other), `${path} of ${JSON.stringify(line)} is ${one}, printed ${other}`).toBe(true)
      }
    }
  })

  it('is checked for every table of samples/published', () => {
    const files = readdirSync(samples).filter((name) => name.endsWith('.csv'))
    expect(files.sort()).toEqual(publishedStudies.map(({ file }) => file).sort())
  })
})

/** Any values, so many: a limit stands so many SDs below the mean, whatever they are. */
function tableOf(n: number): string {
  const file = join(folder, `${n}.csv`)
  const rows = Array.from({ length: n }, (_, i) => `G,${(10 + Math.sin(i * i) + (i % 7) / 10).toFixed(4)}`)
  writeFileSync(file, `group,strength_MPa\n${rows.join('\n')}\n`)
  return file
}

describe('the lower limits of a group summary', () => {
  // ASTM D2915 and EN 14358 (75 % confidence, 5th percentile), from memory; more digits by R qt and scipy nct.
  it.each([
    [3, '0.75', '0.95', '3.152'],
    [5, '0.75', '0.95', '2.46338'],
    [10, '0.75', '0.95', '2.10367'],
    [20, '0.75', '0.95', '1.93196'],
    [100, '0.75', '0.95', '1.75763'],
    [10, '0.95', '0.95', '2.91096'],
    [10, '0.95', '0.99', '3.98112'],
    // NIST/SEMATECH e-Handbook 7.2.6.3 prints 1.8752, after an approximation; this is exact.
    [43, '0.99', '0.90', '1.87395'],
  ])(
    'of %i blocks at %s confidence and content %s lie %s SDs below the mean',
    async (n, confidence, content, factor) => {
      const words = ['--only', 'group-summary', '--tolerance-confidence', confidence, '--tolerance-content', content]
      const [line] = await findings(tableOf(n), ...words)
      const { meanMPa, sdMPa, lowerToleranceMPa } = line as Record<string, number>
      expect(isPrinted((meanMPa! - lowerToleranceMPa!) / sdMPa!, factor)).toBe(true)
    },
  )

  it.each([
    [27, null],
    [28, 0],
    [52, 0],
    [53, 1],
    [78, 2],
    [102, 3],
    [125, 4],
  ])('without a distribution, of %i blocks, is the one in place %j from the weakest', async (n, place) => {
    // ASTM D2915, 75 % confidence: the least numbers of blocks for the order statistics (from memory).
    const file = join(folder, 'ordered.csv')
    const rows = Array.from({ length: n }, (_, i) => `G,${5 + i}`)
    writeFileSync(file, `group,strength_MPa\n${rows.join('\n')}\n`)
    const [line] = await findings(file, '--only', 'group-summary')
    expect(line!.lowerToleranceNonparametricMPa).toBe(place === null ? null : 5 + place)
  })
})
