import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { captureAndKill, faultsAfterKill } from './killedCapture.ts'

const longestRunMs = 400

/** Kills a capturing program at random moments, as often as the first word says (200), and checks the archive after each. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const kills = Number(words[0] ?? 200)
  if (!Number.isInteger(kills) || kills < 1) throw new RangeError('archiveCrash takes a number of kills')
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-crash-'))
  const path = join(folder, 'killed.breakledger')
  const counts = { samples: 0, finished: 0, cutShort: 0 }
  let sound = true
  try {
    for (let kill = 1; kill <= kills; kill++) {
      const afterMs = Math.round(Math.random() * longestRunMs)
      const acknowledged = await captureAndKill(path, afterMs)
      for (const { samples, finished } of acknowledged.values()) {
        counts.samples += samples
        counts[finished ? 'finished' : 'cutShort'] += 1
      }
      const faults = await faultsAfterKill(path, acknowledged)
      if (faults.length === 0) continue
      sound = false
      console.log(`kill ${kill}, ${afterMs} ms after the first samples:\n  ${faults.join('\n  ')}`)
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  console.log(
    `${sound ? 'held  ' : 'FAILED'} ${kills} kills: ${counts.samples} acknowledged samples in ${counts.finished} finished ` +
      `breaks and ${counts.cutShort} cut short`,
  )
  return sound
}
