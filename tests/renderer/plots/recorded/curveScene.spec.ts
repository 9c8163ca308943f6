import { expect, it } from 'vitest'
import { type CurveScene, scaledScene } from '#renderer/plots/recorded/curveScene.ts'

it('shows every force of a scene in other units, and leaves the times', () => {
  const scene: CurveScene = {
    marks: [{ timeS: 1, value: 10, label: 'peak', shape: 'peak' }],
    levels: [{ value: 20, label: 'rated load', kind: 'alarm' }],
    spans: [{ fromS: 1, toS: 2, chosen: true }],
    gaps: [{ fromS: 3, toS: 4 }],
    band: { fromS: 0, toS: 1, value: 2, halfWidth: 3, label: 'zero' },
    line: { fromS: 0, fromValue: 4, toS: 5, toValue: 6, label: 'line' },
  }
  expect(scaledScene(scene, 10)).toEqual({
    marks: [{ timeS: 1, value: 100, label: 'peak', shape: 'peak' }],
    levels: [{ value: 200, label: 'rated load', kind: 'alarm' }],
    spans: [{ fromS: 1, toS: 2, chosen: true }],
    gaps: [{ fromS: 3, toS: 4 }],
    band: { fromS: 0, toS: 1, value: 20, halfWidth: 30, label: 'zero' },
    line: { fromS: 0, fromValue: 40, toS: 5, toValue: 60, label: 'line' },
  })
})
