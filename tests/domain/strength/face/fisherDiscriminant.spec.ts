import { describe, expect, it } from 'vitest'
import { fisherDiscriminant } from '#domain/strength/face/fisherDiscriminant.ts'
import { irisVersicolor, irisVirginica } from './fisherIris.ts'

const flowers = [...irisVersicolor, ...irisVirginica]
const features = [0, 1, 2, 3].map((k) => flowers.map((flower) => flower[k]!))
const places = (from: number) => Array.from({ length: 50 }, (_, i) => from + i)

describe("Fisher's discriminant of his irises", () => {
  // R 4.2.2, MASS::lda(Species ~ ., data = droplevels(subset(iris, Species != "setosa"))): scaling, and means %*% scaling.
  const scaling = [-0.943117785974435, -1.479428723176039, 1.848451034429052, 3.284730442382764]

  it('weighs the four measurements as R does', () => {
    const { weights } = fisherDiscriminant(features, places(0), places(50))!
    weights.forEach((weight, k) => {
      expect(weight).toBeCloseTo(scaling[k]!, 10)
    })
  })

  it('puts the means of both species where R puts them', () => {
    const { firstMean, secondMean } = fisherDiscriminant(features, places(0), places(50))!
    expect(firstMean).toBeCloseTo(2.53358923252543, 10)
    expect(secondMean).toBeCloseTo(6.30438302269246, 10)
  })
})

it('finds none where features depend on each other or the classes are one', () => {
  expect(fisherDiscriminant([features[0]!, features[0]!], places(0), places(50))).toBeNull()
  expect(fisherDiscriminant(features, places(0), places(0))).toBeNull()
})

it('refuses a class of one', () => {
  expect(() => fisherDiscriminant(features, [0], places(50))).toThrow(RangeError)
})
