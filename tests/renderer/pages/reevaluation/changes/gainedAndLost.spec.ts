import { expect, it } from 'vitest'
import { gainedAndLost } from '#renderer/pages/reevaluation/changes/gainedAndLost.ts'

it('tells what came and what went, each as often as it does', () => {
  expect(gainedAndLost(['seating', 'pop-in'], ['seating', 'plateau', 'plateau'])).toEqual({
    gained: ['plateau', 'plateau'],
    lost: ['pop-in'],
  })
  expect(gainedAndLost(['glitch', 'glitch'], ['glitch'])).toEqual({ gained: [], lost: ['glitch'] })
  expect(gainedAndLost(['a', 'b'], ['b', 'a'])).toEqual({ gained: [], lost: [] })
})
