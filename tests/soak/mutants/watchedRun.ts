import { afterEach, beforeEach, inject } from 'vitest'

// Runs before each copy of a spec. One failed test has caught its mutant, so that the others need not run; and loops are counted,
// not timed, so that a busy machine catches nothing.
declare module 'vitest' {
  interface ProvidedContext {
    /** By the number of a loop, and of any other. */
    mostLoopTurns: { readonly byLoop: readonly number[]; readonly ofOthers: number }
  }
  interface TaskMeta {
    /** Of each loop, so far. */
    loopTurns?: readonly number[]
  }
}

const most = inject('mostLoopTurns')
const turns: number[] = []
let caught = false

Object.assign(globalThis, {
  countLoopTurn(loop: number) {
    const turned = (turns[loop] ?? 0) + 1
    turns[loop] = turned
    if (turned > (most.byLoop[loop] ?? most.ofOthers)) throw new Error('A loop does not end.')
  },
})

beforeEach((context) => {
  if (caught) context.skip()
  context.onTestFailed(() => {
    caught = true
  })
})

afterEach((context) => {
  context.task.meta.loopTurns = Array.from(turns, (turned) => turned ?? 0)
})
