import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type AttackedProgram, startAttackedProgram } from './hostileSocket/attackedProgram.ts'
import { readEverything } from './hostileSocket/readEverything.ts'
import { attackWithFrames, attackWithInputs } from './hostileSocket.ts'

describe('a share of the attack on the socket', () => {
  let program: AttackedProgram
  beforeAll(async () => {
    program = await startAttackedProgram()
  })
  afterAll(() => program.close())

  it('no random frame ends the process', async () => {
    expect(await attackWithFrames(program, 300, 11)).toEqual({ tried: 300, held: 300, broke: [] })
  })

  it('random inputs are answered, and leave nothing that cannot be read', async () => {
    const { taken, ...figures } = await attackWithInputs(program, 300, 12)
    expect(figures).toEqual({ tried: 300, held: 300, broke: [] })
    expect(taken).toBeGreaterThan(30)
    expect(await readEverything(program.client)).toEqual([])
  })
})
