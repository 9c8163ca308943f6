import { naturalKey } from '#domain/text/naturalOrder.ts'
import { adhesiveNoteWords } from '#words/programme/glueUpWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'

/** What the catalogue knows of the adhesives that are used: mix, times and safety, before anybody opens a bottle. */
export function AdhesiveNotes({ adhesives }: { adhesives: readonly string[] }) {
  const { value: choices } = useAnswer('catalogue.choices', { kind: 'adhesive' })
  const notes = adhesives.flatMap((adhesive) => {
    const known = choices?.find(({ fields }) => naturalKey(fields.name) === naturalKey(adhesive))?.fields
    const words = known?.kind === 'adhesive' ? adhesiveNoteWords(known) : ''
    return words === '' ? [] : [{ adhesive, words }]
  })
  if (notes.length === 0) return null
  return (
    <dl className="facts glue-notes">
      {notes.map(({ adhesive, words }) => (
        <div key={adhesive}>
          <dt>{adhesive}</dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  )
}
