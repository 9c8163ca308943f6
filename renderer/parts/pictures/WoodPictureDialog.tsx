import { useMemo, useState } from 'react'
import type { KeptPicture } from '#contract/specimens/pictureProcedures.ts'
import type { FaceCorners } from '#domain/strength/face/homography.ts'
import type { AreaSides } from '#domain/strength/face/proportion.ts'
import { maskDigits, tornMask, tornPercent } from '#domain/strength/face/tornMask.ts'
import { type SurfacesTold, tornWoodMethod } from '#domain/strength/face/tornScores.ts'
import { toldWords, toNearest5 } from '#words/specimens/pictureWords.ts'
import { useAction } from '../../host/useAction.ts'
import { CancelButton } from '../../widgets/dialogs/CancelButton.tsx'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Form } from '../../widgets/forms/Form.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import { WoodFailure } from '../assessment/WoodFailure.tsx'
import { emptyEntry } from '../assessment/woodFailureEntry.ts'
import { useSigner } from '../decisions/signer.ts'
import { PictureFigures } from './PictureFigures.tsx'
import { useFaceReading } from './useFaceReading.ts'
import { usePictureThread } from './usePictureThread.ts'

const inset = 0.1
const firstCorners: FaceCorners = [
  { x: inset, y: inset },
  { x: 1 - inset, y: inset },
  { x: 1 - inset, y: 1 - inset },
  { x: inset, y: 1 - inset },
]

/** Proposes the wood failure of a photographed face within four corners, and takes what the person decides. */
export function WoodPictureDialog({
  picture,
  sides,
  onDecided,
  onClose,
}: {
  picture: KeptPicture
  sides: AreaSides | null
  onDecided(woodFailurePercent: number): void
  onClose(): void
}) {
  const { attachment, readings } = picture
  const before = readings.at(-1)
  const thread = usePictureThread(true)
  const by = useSigner()
  const decide = useAction('pictures.decide')
  const [corners, setCorners] = useState(
    before === undefined ? firstCorners : (before.corners as unknown as FaceCorners),
  )
  const [moved, setMoved] = useState(before?.threshold ?? null)
  const [entry, setEntry] = useState(emptyEntry)
  const [asked, setAsked] = useState(false)
  const state = useFaceReading(attachment, thread, corners, sides)
  const { reading, progress, error } = state
  const threshold = moved ?? reading?.torn.limit ?? 50
  const mask = useMemo(() => (reading === null ? null : tornMask(reading.torn.scores, threshold)), [reading, threshold])
  const percent = mask === null ? null : tornPercent(mask)

  async function keep(): Promise<boolean> {
    setAsked(true)
    if (mask === null || percent === null || progress !== null || entry.percent === null) return false
    const kept = await decide.run({
      attachmentId: attachment.attachmentId,
      corners: [...corners],
      threshold,
      method: tornWoodMethod,
      maskWidth: mask.width,
      maskHeight: mask.height,
      mask: maskDigits(mask),
      proposedPercent: percent,
      decidedPercent: entry.percent,
      by,
    })
    if (kept !== null) onDecided(entry.percent)
    return kept !== null
  }

  return (
    <Dialog title={`Wood failure from ${attachment.name}`} onClose={onClose} width="widest">
      <Form onSubmit={keep}>
        <Notice trouble={error} />
        <PictureFigures name={attachment.name} state={state} mask={mask} corners={corners} onCorners={setCorners} />
        <div className="wood-picture-reading">
          <label className="threshold">
            <span>Threshold: to the left more counts as torn wood</span>
            <input
              type="range"
              min={0}
              max={100}
              step={1}
              value={threshold}
              onChange={(event) => setMoved(Number(event.currentTarget.value))}
            />
          </label>
          <Proposal percent={percent} told={reading?.torn.told ?? null} />
          <div>
            <WoodFailure entry={entry} onEntry={setEntry} />
            {asked && entry.percent === null ? (
              <p className="field-error" role="alert">
                Say what the wood failure is: the picture proposes, you decide.
              </p>
            ) : null}
          </div>
        </div>
        <Notice trouble={decide.error} />
        <div className="dialog-buttons">
          <CancelButton />
          <button
            type="button"
            className="button"
            aria-disabled={percent === null}
            onClick={() => {
              if (percent !== null) setEntry({ ...emptyEntry, percent: toNearest5(percent) })
            }}
          >
            Take what is hatched
          </button>
          <button type="submit" className="button button-primary" aria-disabled={decide.pending || progress !== null}>
            Keep and describe the faces
          </button>
        </div>
      </Form>
    </Dialog>
  )
}

/** What is hatched, to the nearest 5 and exactly, and how far to trust it. */
function Proposal({ percent, told }: { percent: number | null; told: SurfacesTold | null }) {
  return (
    <div>
      <p className="wood-proposed">
        {percent === null ? 'Not read yet' : `${toNearest5(percent)} %`}
        {percent === null ? null : <span className="quiet"> hatched, {percent.toFixed(1)} % exactly</span>}
      </p>
      {told === null ? null : <p className="quiet">{toldWords[told]}</p>}
    </div>
  )
}
