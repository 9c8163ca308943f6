/**
 * A process of its own that brings a table in, or only reads it, and says how long that took and how much memory it ever had:
 * `importingProcess.ts import FILE MAP.json ARCHIVE` or `importingProcess.ts plain FILE`. Prints one JSON object.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from 'csv-parse/sync'
import { importFile } from '#engine/importFile.ts'

const [what, file = '', mapFile = '', archive = ''] = process.argv.slice(2)

async function importAll(): Promise<number> {
  const asked = { file, mapFile, archive, by: 'bench', dryRun: false }
  const { signal } = new AbortController()
  const { summary } = await importFile(asked, 'bench', join(`${archive}-heads`), () => {}, signal)
  return summary.new
}

const startedAt = performance.now()
const rows = what === 'plain' ? (parse(readFileSync(file)) as unknown[]).length - 1 : await importAll()
const seconds = (performance.now() - startedAt) / 1000
process.stdout.write(`${JSON.stringify({ rows, seconds, megabytes: process.resourceUsage().maxRSS / 1024 })}\n`)
