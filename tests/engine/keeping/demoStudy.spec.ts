import { expect, it } from 'vitest'
import {
  demoAdhesives,
  demoAssessment,
  demoBlocks,
  demoGroups,
  demoOverruled,
  demoSetAside,
} from '#engine/keeping/demoStudy.ts'

const blocks = demoGroups.flatMap(demoBlocks)

it('numbers every block once, twelve a group, and marks each as invented', () => {
  expect(new Set(blocks.map(({ number }) => number)).size).toBe(blocks.length)
  expect(blocks.length).toBe(demoGroups.length * 12)
  expect(blocks.every(({ demo, notes }) => demo && notes.includes('Invented'))).toBe(true)
})

it('leaves most of the specimens waiting and names every adhesive of the school', () => {
  const broken = demoGroups.reduce((sum, group) => sum + group.broken, 0)
  expect(broken).toBe(64)
  expect(blocks.length - broken).toBe(104)
  expect(new Set(blocks.map(({ adhesive }) => adhesive)).size).toBe(demoAdhesives.length)
})

it('sets aside only blocks that were broken', () => {
  const broken = demoGroups.flatMap((group) => demoBlocks(group).slice(0, group.broken)).map(({ number }) => number)
  for (const number of Object.keys({ ...demoSetAside, ...demoOverruled })) expect(broken).toContain(number)
})

it('assesses wood failure to the nearest 5 %', () => {
  for (const group of demoGroups)
    for (let index = 0; index < group.broken; index++) {
      const { woodFailurePercent } = demoAssessment(group, index)
      expect(woodFailurePercent % 5).toBe(0)
      expect(woodFailurePercent).toBeGreaterThanOrEqual(0)
      expect(woodFailurePercent).toBeLessThanOrEqual(100)
    }
})
