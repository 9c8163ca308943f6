import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { killCaptureCommand } from './killedCommand.ts'

// The smaller share of "npm run soak -- kill".

let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-command-crash-'))
})
afterEach(() => rm(folder, { recursive: true, force: true }))

it.runIf(process.platform !== 'win32')(
  'a capture command that is killed leaves every sample that came 250 ms before, and finished breaks as they were',
  async () => {
    const archive = join(folder, 'killed.breakledger')
    const stream = { rateHz: 80, speed: 4 }
    const inLoading = await killCaptureCommand(archive, { ...stream, seed: 3, afterS: 0.8 })
    expect(inLoading).toMatchObject({ faults: [], finished: 0, running: true })
    const afterBreak = await killCaptureCommand(archive, { ...stream, seed: 4, afterS: 2.7 })
    expect(afterBreak).toMatchObject({ faults: [], finished: 1 })
  },
)
