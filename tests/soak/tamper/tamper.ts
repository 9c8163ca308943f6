import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openOwnArchive } from '#engine/core/realParts.ts'
import { verifyArchive } from '#engine/keeping/verifyArchive.ts'
import { watchChain } from '#engine/keeping/watchChain.ts'
import { type Attack, attacks, type Noticing } from './attacks.ts'
import { type Place, tamperedStudy } from './tamperedStudy.ts'

const program = 'breakledger soak'

/** Does to an archive what other tools, bad disks and slips of the hand can do, and sees where a person is told. */
export async function soak(words: readonly string[]): Promise<boolean> {
  if (words.length > 0) throw new RangeError('tamper takes no words')
  const broke = await attackAll(attacks, (line) => console.log(line))
  console.log(`tried ${attacks.length} / held ${attacks.length - broke} / broke ${broke}`)
  return broke === 0
}

/** Tries each; returns how many were not noticed where they must be, or were taken for harm and are none. */
export async function attackAll(tried: readonly Attack[], print: (line: string) => void): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-tamper-'))
  let broke = 0
  try {
    const { place, reset } = await tamperedStudy(join(folder, 'shop'))
    for (const attack of tried) {
      reset(attack.ended ?? 'closed')
      attack.act(place)
      const seen = await noticedBy(place)
      const missed = attack.noticed.filter((one) => !seen.includes(one))
      const falsely = attack.noticed.length === 0 ? seen : []
      if (missed.length + falsely.length > 0) broke += 1
      const verdict = missed.length + falsely.length > 0 ? 'BROKE' : 'held '
      print(
        `${verdict} ${attack.name}: noticed by ${seen.join(', ') || 'none'}${missed.length > 0 ? `; not by ${missed.join(', ')}` : ''}`,
      )
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  return broke
}

/** Reading first, as it changes nothing. */
async function noticedBy(place: Place): Promise<Noticing[]> {
  const seen: Noticing[] = []
  const faults = await faultsOf(place)
  if (faults.some((where) => !where.startsWith(byHead))) seen.push('verify')
  if (faults.some((where) => where.startsWith(byHead) || where === unreadable)) seen.push('head')
  if (!(await opensAsBefore(place))) seen.push('opening')
  return seen
}

const byHead = 'head written down'
const unreadable = 'cannot be read at all'

/** Where verify finds faults when it is given the head that was written down. */
async function faultsOf({ study, heads, noted }: Place): Promise<string[]> {
  const held = { keptIn: heads, writtenDown: noted, accept: false }
  try {
    const { faults } = await verifyArchive(study, program, held, () => {}, new AbortController().signal)
    return faults.map(({ where }) => where)
  } catch {
    return [unreadable]
  }
}

async function opensAsBefore({ study, heads }: Place): Promise<boolean> {
  try {
    const archive = await openOwnArchive(study, program)
    try {
      const { finding, close } = await watchChain(archive, heads)
      await close()
      return finding === null
    } finally {
      await archive.close()
    }
  } catch {
    return false
  }
}
