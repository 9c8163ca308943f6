import { afterEach, beforeEach, inject } from 'vitest'

// Runs before each copy of a spec. One failed test has caught its mutant, so that the others need not run; and loops are counted,
// not timed, so that a busy machine catches nothing.
declare module 'vitest' {
  interface ProvidedContext {
    mostLoopTurns: number
  }
  interface TaskMeta {
    loopTurns?: number
  }
}

const most = inject('mostLoopTurns')
let turns = 0
let caught = false

Object.assign(globalThis, {
  countLoopTurn() {
    turns += 1
    if (turns > most) throw new Error('A loop does not end.')
  },
})

beforeEach((context) => {
  if (caught) context.skip()
  context.onTestFailed(() => {
    caught = true
  })
})

afterEach((context) => {
  context.task.meta.loopTurns = turns
})
