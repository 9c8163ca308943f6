import { cpus } from 'node:os'
import { parseArgs } from 'node:util'
import { buildIfNeeded } from '#shells/start/build.ts'
import { archiveBenchmark } from './archive.ts'
import { compareBenchmark } from './compare.ts'
import { findingsBenchmark } from './findings.ts'
import { importBenchmark } from './import.ts'
import { liveBenchmark } from './live.ts'
import type { Benchmark } from './measurement.ts'
import { overviewBenchmark } from './overview.ts'
import { signalBenchmark } from './signal.ts'
import { tableText } from './table.ts'

const benchmarks: Record<string, Benchmark> = {
  signal: signalBenchmark,
  live: liveBenchmark,
  archive: archiveBenchmark,
  compare: compareBenchmark,
  import: importBenchmark,
  findings: findingsBenchmark,
  overview: overviewBenchmark,
}

const usage = `Usage: npm run bench [-- NAME...] [-- --json]
Names: ${Object.keys(benchmarks).join(', ')}; all of them without a name.
Exit codes: 0 every target that was measured is met, 1 one is not or a benchmark failed, 2 the command line is wrong.
`

async function run(): Promise<number> {
  const { values, positionals } = parseArgs({
    options: { json: { type: 'boolean', default: false }, help: { type: 'boolean', short: 'h', default: false } },
    allowPositionals: true,
  })
  if (values.help) return say(usage, 0)
  const unknown = positionals.find((name) => !Object.hasOwn(benchmarks, name))
  if (unknown !== undefined) return complain(`There is no benchmark "${unknown}".\n${usage}`)

  if (!values.json) say(`Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}\n`, 0)
  await buildIfNeeded('threads')
  let allMet = true
  for (const [name, benchmark] of Object.entries(benchmarks)) {
    if (positionals.length > 0 && !positionals.includes(name)) continue
    const outcome = await benchmark().catch((thrown: unknown) => ({ failed: String(thrown) }))
    if (!Array.isArray(outcome)) {
      const failed = 'failed' in outcome
      const why = failed ? outcome.failed : outcome.because
      if (values.json) say(`${JSON.stringify({ benchmark: name, [failed ? 'failed' : 'notRun']: why })}\n`, 0)
      else say(`\n${name}: ${failed ? 'FAILED' : 'NOT RUN'}, ${why}\n`, 0)
      if (failed) allMet = false
      continue
    }
    if (values.json) for (const line of outcome) say(`${JSON.stringify({ benchmark: name, ...line })}\n`, 0)
    else say(`\n${name}\n${tableText(outcome)}`, 0)
    allMet &&= outcome.every(({ target }) => target === null || target.met)
  }
  return allMet ? 0 : 1
}

function say(text: string, code: number): number {
  process.stdout.write(text)
  return code
}

function complain(text: string): number {
  process.stderr.write(text)
  return 2
}

process.exitCode = await run().catch((thrown: unknown) => {
  const isUsage = thrown instanceof TypeError && 'code' in thrown && String(thrown.code).startsWith('ERR_PARSE_ARGS')
  if (isUsage) return complain(`${thrown.message}\n${usage}`)
  throw thrown
})
