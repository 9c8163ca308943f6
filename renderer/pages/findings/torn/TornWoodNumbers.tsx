import type { FindingsOptions } from '#contract/findings/options.ts'
import { Field } from '../../../widgets/Field.tsx'
import { percentNeeded, typedFactor, typedLimit } from '../findingsQuestions.ts'

type Numbers = { limitPercent: string; adjustFactor: string }

/** The numbers of the treatment that is chosen, or of all of them, as they are typed. */
export function TornWoodNumbers({
  woodFailure,
  numbers: { limitPercent, adjustFactor },
  onNumbers,
}: {
  woodFailure: FindingsOptions['woodFailure'] | 'all'
  numbers: Numbers
  onNumbers(change: Partial<Numbers>): void
}) {
  const all = woodFailure === 'all'
  return (
    <>
      {all || woodFailure === 'bond-only' || woodFailure === 'censored' ? (
        <Field
          label="Wood failure from"
          unit="%"
          value={limitPercent}
          error={typedLimit(limitPercent) === null ? percentNeeded('at most 100', 75) : null}
          onChange={(event) => onNumbers({ limitPercent: event.currentTarget.value })}
        />
      ) : null}
      {all || woodFailure === 'adjusted' ? (
        <Field
          label="Factor of the adjustment"
          value={adjustFactor}
          error={typedFactor(adjustFactor) === null ? 'Say a number of 0 or more; 1 is used.' : null}
          onChange={(event) => onNumbers({ adjustFactor: event.currentTarget.value })}
        />
      ) : null}
    </>
  )
}
