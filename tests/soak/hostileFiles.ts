import { Trouble } from '#contract/errors.ts'
import { climateMapping } from '#contract/findings/climate.ts'
import { importMapping } from '#contract/specimens/importMapping.ts'
import { readImportTable } from '#engine/specimens/importTable.ts'
import { proposeLogger } from '#exchange/climate/proposeLogger.ts'
import { readLogger } from '#exchange/climate/readLogger.ts'
import { lookAtSheet } from '#exchange/import/lookAtSheet.ts'
import { readSheetFile } from '#exchange/sheets/readSheetFile.ts'
import { type HostileFile, hostileSheets } from './hostileFiles/hostileSheets.ts'
import { hostileTables } from './hostileFiles/hostileTables.ts'
import type { HostileFigures } from './hostileSocket.ts'

/** All files that were made to do harm. */
export const hostileFiles: readonly HostileFile[] = [...hostileSheets, ...hostileTables]

const unsaid = { sheet: null, delimiter: null, encoding: null, headerRow: 1 }
const fields = { load: { column: 'B', unit: 'N' }, brokenOn: { column: 'A' }, note: { column: 'A' } }
const mapping = importMapping.parse({ layout: 'row-per-specimen', headerRow: 0, fields })
const climate = climateMapping.parse({
  time: { column: 'A' },
  timeZone: 'UTC',
  temperature: { column: 'B', unit: 'C' },
})
const nowS = Date.UTC(2031, 0, 1) / 1000

/** Every way in which a file is read that somebody brings. */
const readers: Readonly<Record<string, (bytes: Buffer) => Promise<unknown>>> = {
  'looked at': async (bytes) => lookAtSheet(await readSheetFile('file', bytes, unsaid), null, ''),
  'brought in': (bytes) => readImportTable('file', bytes, mapping),
  'proposed as a logger': (bytes) => proposeLogger('file', bytes, { sheet: null, headerRow: null, earlier: [] }),
  'read as a logger': (bytes) => readLogger('file', bytes, climate, nowS, () => {}),
}

/** Reads each file in every way: it is read, or refused with a sentence, within the time. */
export async function attackWithFiles(
  files: readonly HostileFile[],
  withinS: number,
  told: (line: string) => void = () => {},
): Promise<HostileFigures> {
  const figures: HostileFigures = { tried: 0, held: 0, broke: [] }
  for (const { name, make } of files) {
    const bytes = await make()
    for (const [way, read] of Object.entries(readers)) {
      figures.tried++
      const started = performance.now()
      const fault = await faultOf(read, bytes)
      const seconds = (performance.now() - started) / 1000
      if (fault === null && seconds <= withinS) figures.held++
      else figures.broke.push(`${name}, ${way}: ${fault ?? `it took ${seconds.toFixed(1)} s`}`)
      told(`${name}, ${way}: ${seconds.toFixed(2)} s`)
    }
  }
  return figures
}

/** What went wrong beyond what a person is told in a sentence of a sensible length; null: nothing. */
async function faultOf(read: (bytes: Buffer) => Promise<unknown>, bytes: Buffer): Promise<string | null> {
  try {
    await read(bytes)
    return null
  } catch (thrown) {
    if (!(thrown instanceof Trouble) || thrown.code === 'internal') return String(thrown).slice(0, 300)
    const said = thrown.message.length + thrown.hint.length
    return said < 1000 ? null : `the sentence has ${said} characters`
  }
}

/** `npm run soak -- hostileFiles`: all of them, each within a minute, with seconds and memory; words behind the name choose among them. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const chosen = hostileFiles.filter(({ name }) => words.every((word) => name.includes(word)))
  const { tried, held, broke } = await attackWithFiles(chosen, 60, (line) =>
    console.log(`${line}, ${Math.round(process.memoryUsage().rss / 1e6)} MB`),
  )
  console.log(`${tried} tried, ${held} held, ${broke.length} broke`)
  for (const one of broke) console.log(`  ${one}`)
  return tried > 0 && broke.length === 0
}
