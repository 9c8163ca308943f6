import type { TypedSetAsideCause } from '#contract/specimens/typedResult.ts'
import { typedSetAsideChoice, typedSetAsideMeaning } from '#words/specimens/typedResultWords.ts'
import { Choice } from '../../widgets/Choice.tsx'

const causes = ['other', 'wrong-block'] as const

/** Asks what a result without a curve that is set aside says of its block: whether that comes back to the shelf hangs on it. */
export function TypedAsideChoice({
  of,
  cause,
  onCause,
}: {
  of: Parameters<typeof typedSetAsideMeaning>[1]
  cause: TypedSetAsideCause
  onCause(cause: TypedSetAsideCause): void
}) {
  return (
    <>
      <Choice<TypedSetAsideCause>
        label={of === 'file' ? 'The blocks were' : 'The block was'}
        options={causes.map((value) => ({ value, label: typedSetAsideChoice(value, of) }))}
        value={cause}
        onChange={onCause}
        focusFirst
      />
      <p className="quiet" role="status">
        {typedSetAsideMeaning(cause, of)}
      </p>
    </>
  )
}
