import { beforeEach, describe, expect, it } from 'vitest'
import { createRouteGate, type GateWindow, type RouteGate } from '#renderer/parts/routing/routeGate.ts'

/** A window whose history behaves as a browser's: it moves first and tells afterwards, without saying where it came from. */
function fakeWindow(first: string) {
  const entries: { hash: string; state: unknown }[] = [{ hash: first, state: null }]
  let at = 0
  let told = () => {}
  const window: GateWindow = {
    location: {
      get hash() {
        return entries[at]!.hash
      },
      set hash(next) {
        entries.splice(at + 1)
        at = entries.push({ hash: next, state: null }) - 1
        told()
      },
    },
    history: {
      get state() {
        return entries[at]!.state
      },
      replaceState(state) {
        entries[at]!.state = state
      },
      go(by) {
        at += by
        told()
      },
    },
    addEventListener: (_kind, call) => {
      told = call
    },
  }
  return { window, hash: () => entries[at]!.hash }
}

describe('a page with something half written', () => {
  let unsaved: boolean
  let fake: ReturnType<typeof fakeWindow>
  let gate: RouteGate

  beforeEach(() => {
    unsaved = false
    fake = fakeWindow('#/bench')
    gate = createRouteGate(fake.window, () => unsaved)
    fake.window.location.hash = '#/specimens'
    fake.window.location.hash = '#/specimens/new'
  })

  it('is left without a question while nothing is written', () => {
    fake.window.history.go(-1)
    expect([gate.shown(), gate.isAsking()]).toEqual(['#/specimens', false])
  })

  it.each([
    ['a link', 'link', '#/breaks'],
    ['the Back button', null, '#/specimens'],
  ])('is not left by %s before the person has said so', (_how, link, to) => {
    unsaved = true
    if (link === null) fake.window.history.go(-1)
    else fake.window.location.hash = to
    expect([gate.shown(), fake.hash(), gate.isAsking()]).toEqual(['#/specimens/new', '#/specimens/new', true])
    gate.stay()
    expect([gate.shown(), fake.hash(), gate.isAsking()]).toEqual(['#/specimens/new', '#/specimens/new', false])
    if (link === null) fake.window.history.go(-1)
    else fake.window.location.hash = to
    gate.leave()
    expect([gate.shown(), fake.hash(), gate.isAsking()]).toEqual([to, to, false])
  })

  it('can be gone back to and forward from after a question', () => {
    unsaved = true
    fake.window.history.go(-2)
    gate.leave()
    expect(gate.shown()).toBe('#/bench')
    unsaved = false
    fake.window.history.go(2)
    expect(gate.shown()).toBe('#/specimens/new')
  })

  it('asks nothing where only the numbers in the address change', () => {
    fake.window.location.hash = '#/compare/1,2'
    unsaved = true
    fake.window.location.hash = '#/compare/1'
    expect([gate.shown(), gate.isAsking()]).toEqual(['#/compare/1', false])
  })

  it('tells those who show it', () => {
    let told = 0
    const end = gate.subscribe(() => told++)
    unsaved = true
    fake.window.location.hash = '#/breaks'
    gate.stay()
    end()
    gate.stay()
    expect(told).toBe(2)
  })
})
