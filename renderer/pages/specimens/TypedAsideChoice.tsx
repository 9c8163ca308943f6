import type { TypedSetAsideCause } from '#contract/specimens/typedResult.ts'
import { typedSetAsideCauseWords, typedSetAsideMeaning } from '#words/specimens/typedResultWords.ts'
import { Choice } from '../../widgets/Choice.tsx'

const options = (['other', 'wrong-block'] as const).map((value) => ({ value, label: typedSetAsideCauseWords[value] }))

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
        label={of === 'file' ? 'Its results are' : 'The result is'}
        options={options}
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
