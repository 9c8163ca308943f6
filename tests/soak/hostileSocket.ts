import { setTimeout as pause } from 'node:timers/promises'
import type { WebSocket } from 'ws'
import { type ProcedureName, procedures } from '#contract/procedures.ts'
import { reply } from '#contract/wire/carrier.ts'
import { createRandom, type RandomStream } from '#domain/numbers/random.ts'
import { type AttackedProgram, startAttackedProgram } from './hostileSocket/attackedProgram.ts'
import { randomFrames } from './hostileSocket/randomFrames.ts'
import { hostileValue, oneOf, randomInput } from './hostileSocket/randomInput.ts'
import { readEverything } from './hostileSocket/readEverything.ts'

/** Of so many tries, those that the program withstood, and what it did not. */
export type HostileFigures = { tried: number; held: number; broke: string[] }
/** Of the inputs, so many were taken: an attack that is always turned away at the door proves little. */
export type InputFigures = HostileFigures & { taken: number }

/** Between two looks at whether the program still answers. */
const lookEvery = 100
const answersWithinMs = 60_000
/** Calls that wait for each other's turn, as a busy page has them. */
const atOnce = 8

/** Sends so many random frames; each may cost its own socket, none the program. */
export async function attackWithFrames(program: AttackedProgram, count: number, seed: number): Promise<HostileFigures> {
  const random = createRandom(seed)
  const figures: HostileFigures = { tried: 0, held: 0, broke: [] }
  let socket: WebSocket | null = null
  for (let i = 0; i < count && program.ended() === null; i++) {
    if (socket === null || socket.readyState !== socket.OPEN) socket = await program.socket()
    const { frames, raw } = randomFrames(random)
    for (const frame of frames) {
      if (socket.readyState !== socket.OPEN) break
      if (raw) bareConnection(socket).write(frame as Uint8Array)
      else socket.send(frame, () => {})
    }
    figures.tried++
    // Time for the socket to be hung up on, else all that follows would go into one that is dead already.
    await pause(1)
    if (i % lookEvery === lookEvery - 1 || i === count - 1) await look(program, figures, `frame ${i}`)
  }
  socket?.terminate()
  return figures
}

/** Calls so many procedures with random inputs; each is answered, and by no fault of the program. */
export async function attackWithInputs(program: AttackedProgram, count: number, seed: number): Promise<InputFigures> {
  const random = createRandom(seed)
  const figures: InputFigures = { tried: 0, held: 0, taken: 0, broke: [] }
  const names = (Object.keys(procedures) as ProcedureName[]).filter((name) => !slow.has(name))
  async function callSome(): Promise<void> {
    while (figures.tried < count && program.ended() === null) {
      figures.tried++
      const name = oneOf(names, random)
      const outcome = await callOnce(program, name, inputFor(name, random))
      if (outcome === 'taken') figures.taken++
      if (outcome === 'taken' || outcome === 'refused') figures.held++
      else {
        figures.broke.push(outcome.fault)
        // A connection that was lost is there again a moment later, or the end of the program is known.
        await pause(200)
      }
    }
  }
  await Promise.all(Array.from({ length: atOnce }, callSome))
  if (program.ended() !== null) figures.broke.unshift(`the process ended: ${program.ended()}`)
  return figures
}

/** They take seconds to minutes; `verify` is asked for at the end. */
const slow: ReadonlySet<string> = new Set(['archive.verify', 'demo.fill', 'ports.listen'])

function inputFor(name: ProcedureName, random: RandomStream): unknown {
  const kind = random.unit()
  if (kind < 0.1) return hostileValue(random, 3)
  return randomInput(procedures[name].input, random, kind < 0.6 ? 0 : 0.03)
}

type Outcome = 'taken' | 'refused' | { fault: string }

async function callOnce({ carrier }: AttackedProgram, name: string, input: unknown): Promise<Outcome> {
  const say = (what: string) => ({ fault: `${name}(${(JSON.stringify(input) ?? 'undefined').slice(0, 500)}): ${what}` })
  const ended = new AbortController()
  try {
    const late = pause(answersWithinMs, 'late' as const, { signal: ended.signal }).catch(() => 'late' as const)
    const answer = await Promise.race([carrier.call(name, input), late])
    if (answer === 'late') return say(`no answer within ${answersWithinMs / 1000} s`)
    const parsed = reply.parse(answer)
    if (parsed.ok) return 'taken'
    return parsed.error.code === 'internal' ? say(parsed.error.message.slice(0, 300)) : 'refused'
  } catch (thrown) {
    return say(String(thrown))
  } finally {
    ended.abort()
  }
}

async function look(program: AttackedProgram, figures: HostileFigures, where: string): Promise<void> {
  const end = program.ended()
  const outcome =
    end === null ? await callOnce(program, 'bench.state', {}) : ({ fault: `the process ended: ${end}` } as const)
  if (outcome === 'taken') figures.held = figures.tried
  else figures.broke.push(`up to ${where}: ${outcome === 'refused' ? outcome : outcome.fault}`)
}

/** `npm run soak -- hostileSocket 10000 --seed 1`: so many frames and so many inputs; false when anything broke. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const count = Number(words[0] ?? 10_000)
  const seed = Number(words[words.indexOf('--seed') + 1] ?? 1) || 1
  const program = await startAttackedProgram()
  try {
    const all = [
      ['random frames', await attackWithFrames(program, count, seed)],
      ['random inputs', await attackWithInputs(program, count, seed + 1)],
    ] as const
    const unreadable = await readEverything(program.client)
    for (const [what, { tried, held, broke, ...more }] of all) {
      const taken = 'taken' in more ? ` (${more.taken} were taken)` : ''
      console.log(`${what}: ${tried} tried${taken}, ${held} held, ${broke.length} broke`)
      for (const example of broke.slice(0, 40)) console.log(`  ${example}`)
    }
    console.log(`records that cannot be read: ${unreadable.length}`)
    for (const example of unreadable.slice(0, 40)) console.log(`  ${example}`)
    return unreadable.length === 0 && all.every(([, { tried, broke }]) => tried === count && broke.length === 0)
  } finally {
    await program.close()
  }
}

/** The connection beneath a socket of `ws`, which its types keep to themselves. */
function bareConnection(socket: WebSocket): { write(bytes: Uint8Array): void } {
  return (socket as unknown as { _socket: { write(bytes: Uint8Array): void } })._socket
}
