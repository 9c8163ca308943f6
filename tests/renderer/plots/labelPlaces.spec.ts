import { describe, expect, it } from 'vitest'
import { clearHeight, wantedPlace } from '#renderer/plots/labelPlaces.ts'

describe('clearHeight', () => {
  const room = { step: 18, highest: 0, lowest: 300 }
  const label = (x: number, y: number, width = 60) => ({ x, y, width })

  it('leaves a label where it is wanted when nothing stands there', () => {
    expect(clearHeight(label(0, 50), [label(100, 50), label(0, 80)], room)).toBe(50)
  })
  it('goes below what stands there, and below what stands below that', () => {
    expect(clearHeight(label(0, 50), [label(40, 55), label(10, 70)], room)).toBe(88)
    expect(clearHeight(label(0, 50), [label(10, 66), label(40, 50)], room)).toBe(84)
  })
  it('keeps two labels in a line apart', () => {
    expect(clearHeight(label(0, 50), [label(63, 50)], room)).toBe(68)
  })
  it('goes upwards from the lowest place where there is no room below', () => {
    expect(clearHeight(label(0, 298), [label(0, 295), label(0, 300)], room)).toBe(277)
  })
  it('comes to an end where rounding makes two labels that touch seem to meet', () => {
    // 238.4 + 18 lies a hair less than 18 above 238.4
    expect(238.4 + 18 - 238.4).toBeLessThan(18)
    expect(clearHeight(label(0, 238.4), [label(0, 238.4)], room)).toBeCloseTo(256.4, 9)
  })
})

describe('wantedPlace', () => {
  const area = { left: 0, right: 400, top: 0, bottom: 300 }
  const height = 18

  it.each(['peak', 'word'] as const)(
    'puts the name of a %s above it, so that it hides neither rise nor fall',
    (shape) => {
      for (const x of [2, 200, 398])
        for (const y of [15, 100, 250]) {
          const place = wantedPlace({ shape, x, y }, 80, area, null, 1)
          expect(place.x).toBeGreaterThanOrEqual(area.left)
          expect(place.x + 80).toBeLessThanOrEqual(area.right)
          if (y > 15) expect(place.y + height / 2).toBeLessThan(y)
          expect(place.y).toBeGreaterThan(area.top - height / 2)
        }
    },
  )
  it('ends the name of the peak that a person picked at its mark, so that it lies on none that follows', () => {
    const { x, width } = wantedPlace({ shape: 'word', x: 200, y: 100 }, 80, area, null, 1)
    expect(x + width).toBeLessThan(212)
  })
  it('names a break above what is left of the load, and before it where the plot ends', () => {
    expect(wantedPlace({ shape: 'break', x: 100, y: 100 }, 80, area, 100, 1)).toEqual({ x: 112, y: 87, width: 80 })
    expect(wantedPlace({ shape: 'break', x: 380, y: 100 }, 80, area, 380, 1)).toEqual({ x: 288, y: 87, width: 80 })
  })
  it('names an event below its mark and what begins before it', () => {
    expect(wantedPlace({ shape: 'event', x: 100, y: 100 }, 80, area, 300, 1).y).toBeGreaterThan(100)
    const onset = wantedPlace({ shape: 'onset', x: 100, y: 290 }, 80, area, 300, 1)
    expect(onset.x + onset.width).toBeLessThan(100)
    expect(onset.y).toBeLessThan(290)
  })
  it('names an event before its mark where its name would lie on the fall of the load', () => {
    const place = wantedPlace({ shape: 'event', x: 250, y: 100 }, 80, area, 300, 1)
    expect(place.x + place.width).toBeLessThan(250)
    expect(place.y).toBeLessThan(100)
    expect(clearHeight(place, [{ ...place, y: place.y - 4 }], { step: 18, highest: 0, lowest: 300 })).toBeLessThan(
      place.y,
    )
    expect(wantedPlace({ shape: 'event', x: 320, y: 100 }, 40, area, 300, 1).x).toBeGreaterThan(320)
  })
  it('measures in pixels of the screen', () => {
    const twice = { left: 0, right: 800, top: 0, bottom: 600 }
    expect(wantedPlace({ shape: 'peak', x: 400, y: 300 }, 160, twice, null, 2)).toEqual({ x: 320, y: 266, width: 160 })
  })
})
