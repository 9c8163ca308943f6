import { simulatedWords } from '#words/bench/cautions.ts'
import { loadText } from '#words/calibration/weightWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Keys } from '../../../widgets/Keys.tsx'

/** Hangs the weights that are asked for on the virtual cell, for the demo: nobody has to imagine them. */
export function VirtualWeights({
  askedN,
  hungN,
  preloading,
  pending,
  onHang,
}: {
  askedN: number
  hungN: number
  preloading: boolean
  pending: boolean
  onHang(): void
}) {
  const { force } = useQuantities()
  const takesOff = askedN === 0 || (preloading && hungN > 0)
  return (
    <section className="work-virtual" aria-label="Virtual weights">
      <button type="button" className="button" aria-disabled={pending} onClick={onHang}>
        {takesOff ? 'Take the virtual weights off' : `Hang ${loadText(askedN, force)} on the virtual cell`}{' '}
        <Keys keys="L" />
      </button>
      <p>
        On it now: {hungN === 0 ? 'nothing' : loadText(hungN, force)}. {simulatedWords}
      </p>
    </section>
  )
}
