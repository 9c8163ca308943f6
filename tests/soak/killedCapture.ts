import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { openArchive } from '#archive/openArchive.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import { knownSamples } from './knownSamples.ts'

/** What the archive had acknowledged before its program was killed, by break. */
export type Acknowledged = Map<number, { samples: number; finished: boolean }>

/** Lets a child capture into the archive and kills it, without warning, so many milliseconds after its first acknowledgement. */
export function captureAndKill(path: string, afterMs: number): Promise<Acknowledged> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(import.meta.dirname, 'capturingChild.ts'), path], {
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    let said = ''
    let complained = ''
    let kill: NodeJS.Timeout | undefined
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      said += text
      kill ??= setTimeout(() => child.kill('SIGKILL'), afterMs)
    })
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      complained += text
    })
    child.on('error', reject)
    child.on('close', (_code, ended) => {
      clearTimeout(kill)
      if (ended === 'SIGKILL') resolve(acknowledgedIn(said))
      else reject(new Error(`the capturing child ended by itself: ${complained}`))
    })
  })
}

function acknowledgedIn(said: string): Acknowledged {
  const acknowledged: Acknowledged = new Map()
  // The last piece is cut off or empty.
  for (const line of said.split('\n').slice(0, -1)) {
    const [word, breakId, samples] = line.split(' ')
    acknowledged.set(Number(breakId), { samples: Number(samples), finished: word === 'finished' })
  }
  return acknowledged
}

/** Opens the archive after a kill and lists everything that is not as promised; empty when all is well. */
export async function faultsAfterKill(path: string, acknowledged: Acknowledged): Promise<string[]> {
  const faults: string[] = []
  const archive = await openArchive({ path, program: 'breakledger test' })
  try {
    const report = await archive.verify(() => {}, new AbortController().signal)
    for (const { where, what } of report.faults) faults.push(`${where}: ${what}`)
    const { recovered } = await archive.info()
    const newest = Math.max(...acknowledged.keys())
    for (const [breakId, { samples, finished }] of acknowledged) {
      const { end, evaluations } = await archive.break(breakId)
      // The end of the newest break may be on the disk without its acknowledgement having been heard.
      const sealed = end?.ending === 'complete' && evaluations.length === 1
      if (finished ? !sealed : !(recovered.includes(breakId) || (sealed && breakId === newest)))
        faults.push(`break ${breakId} ended as ${end?.ending}`)
      faults.push(...samplesThatDiffer(breakId, samples, await archive.readCurve(breakId)))
    }
  } finally {
    await archive.close()
  }
  return faults
}

function samplesThatDiffer(breakId: number, acknowledged: number, curve: RawCurve): string[] {
  const stored = curve.readings.length
  if (stored < acknowledged) return [`break ${breakId} holds ${stored} samples of ${acknowledged} acknowledged`]
  const known = knownSamples(breakId, 0, stored)
  const wrong = curve.readings.findIndex(
    (reading, i) => reading !== known.readings[i] || curve.timeS[i] !== known.timeUs[i]! / 1e6,
  )
  return wrong < 0 ? [] : [`sample ${wrong + 1} of break ${breakId} is not the one that was sent`]
}
