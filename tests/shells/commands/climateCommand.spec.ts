import { writeFileSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

const sample = join(import.meta.dirname, '../../../samples/climate/sail-loft.csv')
let folder = ''
let map = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-climate-'))
  map = join(folder, 'map.json')
})
afterAll(() => rm(folder, { recursive: true, force: true }))

const run = (...words: string[]) => runWords(commands, ['climate', ...words])

describe('climate', () => {
  it('proposes a mapping that a person completes, and brings a file in with it once', async () => {
    const proposed = await run(sample, '--propose')
    expect(proposed.code).toBe(0)
    const mapping = JSON.parse(proposed.out)
    expect(mapping).toMatchObject({ headerRow: 2, timeZone: 'SAY', temperature: { unit: 'C' } })
    writeFileSync(map, JSON.stringify({ ...mapping, timeZone: '+01:00' }))
    const archive = join(folder, 'new.breakledger')
    const words = [sample, '--map', map, '--exposure', 'loft', '--archive', archive, '--json']
    const dry = await run(...words, '--dry-run')
    expect(dry.lines).toHaveLength(601)
    expect(dry.lines[0]).toEqual({
      ...{ row: 3, fate: 'new', timeS: Date.parse('2026-02-19T23:00:00Z') / 1000, temperature: 0.9 },
      ...{ humidityPercent: 82.4, reason: null },
    })
    expect(dry.lines.at(-1)).toMatchObject({ event: 'imported', new: 600, rejected: 0, dryRun: true })
    expect((await run(...words)).lines.at(-1)).toMatchObject({ new: 600, dryRun: false })
    expect((await run(...words)).lines.at(-1)).toMatchObject({ new: 0, alreadyThere: 600 })
    const said = await run('--exposure', 'loft', '--archive', archive)
    expect(said.out).toMatch(/^2026: 25 days of readings: .* % RH .*freeze-thaw cycles?\n1 gap of more than three/)
    expect((await run('--exposure', 'loft', '--archive', archive, '--json')).lines).toMatchObject([{ year: 2026 }])
    const none = await run('--place', 'loft', '--archive', archive)
    expect(none).toMatchObject({ code: 1, err: expect.stringContaining('no climate of the place "loft"') })
  })

  it('says that nothing was stored where it is stopped while it reads the file', async () => {
    const csv = join(folder, 'stopped.csv')
    writeFileSync(csv, 'Time,Temp\n2026-03-01 10:00,5\n')
    const fields = join(folder, 'stopped.json')
    const columns = { time: { column: 'Time' }, temperature: { column: 'Temp', unit: 'C' } }
    writeFileSync(fields, JSON.stringify({ ...columns, timeZone: 'UTC' }))
    const words = ['climate', csv, '--map', fields, '--place', 'loft', '--dry-run']
    const { code, err } = await runWords(commands, words, AbortSignal.abort())
    expect([code, err]).toEqual([1, expect.stringContaining('The import was stopped; nothing of it was stored.')])
  })

  it('says what is missing on its command line', async () => {
    expect(await run(sample, '--exposure', 'loft')).toMatchObject({ code: 2, err: expect.stringContaining('--map') })
    expect(await run(sample, '--map', 'x')).toMatchObject({ code: 2, err: expect.stringContaining('one of the two') })
    expect(await run('--propose')).toMatchObject({ code: 2, err: expect.stringContaining('needs FILE') })
  })

  it('says why a row is rejected, in its sentence', async () => {
    const csv = join(folder, 'short.csv')
    writeFileSync(csv, 'Time,Temp,RH\n2026-02-30 10:00,5,60\n2026-03-01 10:00,5,60\n')
    const fields = join(folder, 'short.json')
    const columns = { time: { column: 'Time' }, temperature: { column: 'Temp', unit: 'C' } }
    writeFileSync(fields, JSON.stringify({ ...columns, timeZone: 'UTC' }))
    const { out, code } = await run(
      csv,
      '--map',
      fields,
      '--place',
      'shed',
      '--dry-run',
      '--archive',
      join(folder, 'none'),
    )
    expect(code).toBe(0)
    expect(out.split('\n').slice(0, 2)).toEqual([
      'Row 2, column A (Time): time: “2026-02-30” is a day that does not exist.',
      'Row 3: 1 Mar 2026, 10:00 UTC, 5 °C, no relative humidity.',
    ])
  })
})
