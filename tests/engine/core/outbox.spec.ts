import { describe, expect, it } from 'vitest'
import { Trouble, type TroubleMessage } from '#contract/errors.ts'
import { createOutbox } from '#engine/core/outbox.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

const diskFull = new Trouble('disk-full', 'The disk is full.', 'Free some space.')

function outboxWith() {
  const clock = movedClock()
  const problems: (TroubleMessage | null)[] = []
  const outbox = createOutbox({ clock, onProblem: (problem) => problems.push(problem) })
  return { clock, problems, outbox }
}

describe('createOutbox', () => {
  it('writes in order, one at a time', async () => {
    const { outbox } = outboxWith()
    const written: number[] = []
    let running = 0
    for (const number of [1, 2, 3])
      outbox.put(async () => {
        expect(++running).toBe(1)
        await Promise.resolve()
        written.push(number)
        running--
      })
    await outbox.drained()
    expect(written).toEqual([1, 2, 3])
  })

  it('keeps what the disk refuses, says so once, and writes it in order when there is room again', async () => {
    const { outbox, clock, problems } = outboxWith()
    const written: number[] = []
    let full = true
    const write = (number: number) => async () => {
      if (full) throw diskFull
      written.push(number)
    }
    outbox.put(write(1))
    await expect(outbox.drained()).rejects.toMatchObject({ code: 'disk-full' })
    outbox.put(write(2))
    await clock.move(2)
    await clock.move(2)
    expect(problems.map((problem) => problem?.code)).toEqual(['disk-full'])
    full = false
    await clock.move(2)
    expect(written).toEqual([1, 2])
    expect(problems.at(-1)).toBeNull()
  })

  it('sets aside what will always be refused, with what builds on it, and lets the others through', async () => {
    const { outbox, clock, problems } = outboxWith()
    const written: string[] = []
    let refuses = true
    const write = (name: string) => async () => {
      if (name.endsWith('1') && refuses && name.startsWith('bad')) throw new Error('no such row')
      written.push(name)
    }
    const bad = {}
    const good = {}
    outbox.put(write('good 1'), good)
    outbox.put(write('bad 1'), bad)
    outbox.put(write('good 2'), good)
    outbox.put(write('bad 2'), bad)
    outbox.put(write('good 3'), good)
    await clock.move(0)
    expect(written).toEqual(['good 1', 'good 2', 'good 3'])
    expect(problems).toEqual([expect.objectContaining({ code: 'internal', message: 'no such row' })])
    // It is not tried again and again ...
    await clock.move(60)
    expect(written.length).toBe(3)
    await expect(outbox.drained()).rejects.toMatchObject({ code: 'internal' })
    expect(problems.at(-1)).not.toBeNull()
    // ... but once more at the end, in order.
    refuses = false
    outbox.put(write('bad 3'), bad)
    await outbox.close()
    expect(written.slice(3)).toEqual(['bad 1', 'bad 2', 'bad 3'])
    expect(problems.at(-1)).toBeNull()
  })

  it('keeps what is set aside while the disk is full', async () => {
    const { outbox, clock, problems } = outboxWith()
    const written: string[] = []
    let full = false
    let broken = true
    outbox.put(async () => {
      if (broken) throw new Error('no such row')
      written.push('first')
    })
    await clock.move(0)
    full = true
    outbox.put(async () => {
      if (full) throw diskFull
      written.push('second')
    })
    await clock.move(2)
    expect(problems.map((problem) => problem?.code)).toEqual(['internal', 'disk-full'])
    full = false
    await clock.move(2)
    expect(written).toEqual(['second'])
    expect(problems.at(-1)?.code).toBe('internal')
    broken = false
    await outbox.drained()
    expect(written).toEqual(['second', 'first'])
    expect(problems.at(-1)).toBeNull()
  })

  it('drains one lane whatever was refused in another, and says what is wrong with its own', async () => {
    const { outbox, problems } = outboxWith()
    const written: string[] = []
    const mended = new Set<object>()
    const put = (name: string, lane: object) =>
      outbox.put(async () => {
        if (!mended.has(lane)) throw new Error(`${name} is refused`)
        written.push(name)
      }, lane)
    const capture = {}
    const calibration = {}
    put('a block', capture)
    put('a reading', calibration)
    await expect(outbox.drained(calibration)).rejects.toThrow('a reading is refused')
    mended.add(calibration)
    await outbox.drained(calibration)
    expect(written).toEqual(['a reading'])
    expect(problems.at(-1)?.message).toBe('a block is refused')
    await expect(outbox.drained()).rejects.toThrow('a block is refused')
  })

  it('rejects on close when something could not be written, and tries no more', async () => {
    const { outbox, clock } = outboxWith()
    let attempts = 0
    outbox.put(async () => {
      attempts++
      throw diskFull
    })
    outbox.put(async () => {})
    await expect(outbox.close()).rejects.toMatchObject({
      code: 'disk-full',
      message: expect.stringMatching(/not kept: 2 writes were still waiting/),
    })
    const before = attempts
    await clock.move(60)
    expect(attempts).toBe(before)
    expect(() => outbox.put(async () => {})).toThrow(TypeError)
  })
})
