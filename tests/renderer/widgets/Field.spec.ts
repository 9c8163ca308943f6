import { expectTypeOf, it } from 'vitest'
import type { FieldProps } from '#renderer/widgets/Field.tsx'

it('asks for a keyboard of numbers for counts alone, as a quantity may be a fraction or name its unit', () => {
  expectTypeOf<FieldProps['inputMode']>().toEqualTypeOf<'numeric' | undefined>()
})
