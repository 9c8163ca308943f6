import { expect, it } from 'vitest'
import { endedSentence } from '#words/sentence.ts'

it('closes what a person wrote with one full stop', () => {
  expect(['cracked early', 'cracked early.', 'did it slip? '].map(endedSentence)).toEqual([
    'cracked early.',
    'cracked early.',
    'did it slip?',
  ])
})
