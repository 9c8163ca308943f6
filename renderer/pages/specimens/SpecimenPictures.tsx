import { useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { KeptPicture } from '#contract/specimens/pictureProcedures.ts'
import { pictureName, readingWords } from '#words/specimens/pictureWords.ts'
import { instantWords } from '#words/units/times.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { PictureDialog } from '../../parts/pictures/PictureDialog.tsx'
import { PictureList } from '../../parts/pictures/PictureList.tsx'
import { PicturesSection } from '../../parts/pictures/PicturesSection.tsx'
import { usePictureThread } from '../../parts/pictures/usePictureThread.ts'
import { hashOf } from '../../routes/route.ts'

/** The photographs of a specimen, and those of the faces of each of its breaks. */
export function SpecimenPictures({ specimenId, breaks }: { specimenId: number; breaks: readonly BreakSummary[] }) {
  const [opened, setOpened] = useState<KeptPicture | null>(null)
  return (
    <div className="specimen-pictures">
      <PicturesSection
        owner={{ specimenId, breakId: null }}
        hint="The block before it breaks, its label, a flaw."
        openName={pictureName}
        onOpen={setOpened}
      />
      {breaks.toReversed().map((summary) => (
        <PicturesOfBreak summary={summary} onOpen={setOpened} key={summary.breakId} />
      ))}
      {opened === null ? null : <PictureDialog picture={opened} onClose={() => setOpened(null)} />}
    </div>
  )
}

/** Nothing where there are none: they are added on the record of the break. */
function PicturesOfBreak({
  summary: { breakId, startedAt },
  onOpen,
}: {
  summary: BreakSummary
  onOpen(picture: KeptPicture): void
}) {
  const pictures = useAnswer('pictures.list', { specimenId: null, breakId }).value ?? []
  const thread = usePictureThread(pictures.length > 0)
  if (pictures.length === 0) return null
  return (
    <section aria-label={`Broken faces, ${instantWords(startedAt)}`}>
      <h3>
        Broken faces of <a href={hashOf({ page: 'break', breakId })}>{instantWords(startedAt)}</a>
      </h3>
      <PictureList
        pictures={pictures}
        thread={thread}
        openName={pictureName}
        onOpen={onOpen}
        below={({ readings }) => <p className="quiet">{readingWords(readings)}</p>}
      />
    </section>
  )
}
