import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import { readCalibrationCsv } from '#exchange/csv/calibrationCsv.ts'

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-calibration-'))
})
afterAll(() => rm(folder, { recursive: true }))

async function read(text: string) {
  const file = join(folder, 'shop.csv')
  await writeFile(file, text)
  return readCalibrationCsv(file)
}

async function troubleOf(text: string): Promise<Trouble> {
  const thrown: unknown = await read(text).then(
    () => null,
    (error) => error,
  )
  expect(thrown).toBeInstanceOf(Trouble)
  return thrown as Trouble
}

const header = 'run,direction,force_N,reading\n'

describe('readCalibrationCsv', () => {
  it('reads rows in order, with the line on which each stands', async () => {
    expect(
      await read(`# weights of the loft\n${header}\n1,up,0,-12.5\n1,up,196.1,19600\n# took off\n1,down,0,+1e1\n`),
    ).toEqual({
      rows: [
        { run: 1, direction: 'up', forceN: 0, reading: -12.5 },
        { run: 1, direction: 'up', forceN: 196.1, reading: 19_600 },
        { run: 1, direction: 'down', forceN: 0, reading: 10 },
      ],
      lines: [4, 5, 7],
    })
  })

  it('takes columns in any order, beside others, quoted, with a byte order mark and the line ends of Windows', async () => {
    const { rows, lines } = await read(
      '\uFEFFreading,note,force_N,direction,run\r\n19600,"hung, still",196.1, up ,2\r\n"39200","",392.2,up,2\r\n',
    )
    expect(rows).toEqual([
      { run: 2, direction: 'up', forceN: 196.1, reading: 19_600 },
      { run: 2, direction: 'up', forceN: 392.2, reading: 39_200 },
    ])
    expect(lines).toEqual([2, 3])
  })

  it.each([
    [
      'text in a number',
      `${header}1,up,0,1\n1,up,many,2\n`,
      /shop\.csv, line 3: force_N is "many", which is no number/,
    ],
    ['a reading that is missing', `${header}1,up,100\n`, /line 2: reading is "", which is no number/],
    ['a decimal comma', `${header}1,up,"100,5",2\n`, /line 2: force_N is "100,5"/],
    ['a number beyond all bounds', `${header}1,up,1e999,2\n`, /line 2: force_N is "1e999"/],
    ['a reading that would be rounded', `${header}1,up,1,9007199254740993\n`, /line 2: reading is "9007199254740993"/],
    ['a word that JavaScript takes for a number', `${header}1,up,Infinity,2\n`, /line 2: force_N is "Infinity"/],
    ['a run that is no whole number', `${header}1.5,up,1,2\n`, /line 2: run is 1\.5/],
    ['a run 0', `${header}0,up,1,2\n`, /line 2: run is 0/],
    ['a direction of its own', `${header}1,sideways,1,2\n`, /line 2: direction is "sideways"/],
    ['a column that is missing', 'run,direction,force\n1,up,1\n', /line 1: there is no column force_N/],
    [
      'a column that is there twice',
      'run,direction,force_N,force_N,reading\n',
      /line 1: the column force_N is there twice/,
    ],
    ['no readings', header, /line 1: no readings follow the header line/],
    ['nothing at all', '', /line 1: the file has no header line/],
  ])('refuses %s and names file and line', async (_what, text, message) => {
    const trouble = await troubleOf(text)
    expect(trouble).toMatchObject({ code: 'not-readable', message: expect.stringMatching(message) })
    expect(trouble.hint).not.toBe('')
  })

  it('says that a file is not there', async () => {
    await expect(readCalibrationCsv(join(folder, 'none.csv'))).rejects.toMatchObject({ code: 'not-found' })
  })
})
