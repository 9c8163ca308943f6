import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { killCaptureCommand } from './killedCommand.ts'

// The smaller share of "npm run soak -- kill", which also asks how much may be lost: that depends on the time the machine has.

let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-command-crash-'))
})
afterEach(() => rm(folder, { recursive: true, force: true }))

it.runIf(process.platform !== 'win32')(
  'a capture command that is killed leaves what it kept as it was sent, and finished breaks as they were',
  async () => {
    const archive = join(folder, 'killed.breakledger')
    const killing = { rateHz: 80, mayLoseS: null }
    const inLoading = await killCaptureCommand(archive, {
      ...{ ...killing, speed: 1, seed: 3, after: 'loading', afterS: 0.5 },
    })
    expect(inLoading).toMatchObject({ faults: [], finished: 0, running: true })
    const afterBreak = await killCaptureCommand(archive, {
      ...{ ...killing, speed: 4, seed: 4, after: 'break', afterS: 0.1 },
    })
    expect(afterBreak.faults).toEqual([])
    expect(afterBreak.finished).toBeGreaterThan(0)
  },
)
