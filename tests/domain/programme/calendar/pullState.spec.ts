import { describe, expect, it } from 'vitest'
import { type PullFacts, pullState, soonDays } from '#domain/programme/calendar/pullState.ts'

const pull: PullFacts = { dueOn: '2031-08-31', windowDays: 14, skipped: false, glued: true, waiting: 12, broken: 0 }

describe('a pull of a window of 14 days', () => {
  it.each([
    ['2031-07-17', 'planned'],
    ['2031-07-18', 'soon'],
    ['2031-08-16', 'soon'],
    ['2031-08-17', 'due'],
    ['2031-08-31', 'due'],
    ['2031-09-01', 'late'],
    ['2031-09-14', 'late'],
    ['2031-09-15', 'missed'],
    ['2041-01-01', 'missed'],
  ])('is on %s %s', (today, state) => {
    expect(soonDays).toBe(30)
    expect(pullState(pull, today)).toBe(state)
  })
})

it('is done when no block waits and one was broken, whenever that was', () => {
  for (const today of ['2031-01-01', '2031-08-31', '2035-01-01'])
    expect(pullState({ ...pull, waiting: 0, broken: 11 }, today)).toBe('done')
})

it('is not done while a block waits', () => {
  expect(pullState({ ...pull, waiting: 1, broken: 11 }, '2031-08-31')).toBe('due')
  expect(pullState({ ...pull, waiting: 1, broken: 11 }, '2032-08-31')).toBe('missed')
})

it('is missed, not done, when all its blocks were lost', () => {
  expect(pullState({ ...pull, waiting: 0 }, '2032-08-31')).toBe('missed')
})

it('stays planned while nothing is glued', () => {
  expect(pullState({ ...pull, glued: false, waiting: 0 }, '2033-01-01')).toBe('planned')
})

it('is skipped whatever the day', () => {
  expect(pullState({ ...pull, skipped: true }, '2031-08-31')).toBe('skipped')
})
