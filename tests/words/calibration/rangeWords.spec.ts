import { expect, it } from 'vitest'
import { rangeText } from '#words/calibration/rangeWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it('says that there is no range', () => expect(rangeText(null, quantitiesIn('SI').force)).toBe('none'))
