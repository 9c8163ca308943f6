import { useState } from 'react'
import type { CatalogueChoice } from '#contract/programme/catalogueProcedures.ts'
import { madeAlike } from '#words/breaks/groupName.ts'
import { mergeWords } from '#words/programme/catalogueWords.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { SelectField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'

/** No dialog shows more groups. */
const mostGroups = 12

/** Merges an entry into another, after showing what becomes one. */
export function MergeDialog({
  from,
  into: proposed = null,
  onClose,
}: {
  from: CatalogueChoice
  into?: number | null
  onClose(): void
}) {
  const { kind, name } = from.fields
  const choices = useAnswer('catalogue.choices', { kind }).value
  const others = (choices ?? []).filter(({ entryId }) => entryId !== from.entryId)
  const [intoId, setIntoId] = useState(proposed)
  const into = others.find(({ entryId }) => entryId === intoId) ?? null
  const preview = useAnswer(
    'catalogue.previewMerge',
    into === null ? null : { fromEntryId: from.entryId, intoEntryId: into.entryId },
  )
  const merge = useAction('catalogue.merge')
  const { length } = useQuantities()
  // A choice that comes later would be taken for something typed
  if (choices === null) return null
  const shown = into === null || preview.error !== null ? null : preview.value
  return (
    <SignatureDialog
      title={`Merge ${name} into another`}
      explains="What was recorded stays as it was written; from now on both names count as one. You can take this back."
      button="Merge"
      whyLabel="Why they are one thing"
      whyMissing="Say why they are one thing."
      pending={merge.pending}
      error={merge.error}
      onSign={async (signature) => {
        if (signature === null || into === null) return false
        return (await merge.run({ fromEntryId: from.entryId, intoEntryId: into.entryId, ...signature })) !== null
      }}
      onClose={onClose}
    >
      <SelectField
        label="Counts from now on as"
        value={intoId ?? ''}
        onChange={(event) => setIntoId(event.currentTarget.value === '' ? null : Number(event.currentTarget.value))}
      >
        <option value="">Choose …</option>
        {others.map(({ entryId, fields }) => (
          <option key={entryId} value={entryId}>
            {fields.name}
          </option>
        ))}
      </SelectField>
      <Notice trouble={preview.error} />
      {shown === null || into === null ? null : (
        <div aria-live="polite">
          <p>{mergeWords(shown, name, into.fields.name)}</p>
          <ul className="merge-groups">
            {shown.groups.slice(0, mostGroups).map((group) => (
              <li key={JSON.stringify(group)}>
                {madeAlike(group, (mm) => length.text(mm))}: {group.fromSpecimens} + {group.intoSpecimens}
              </li>
            ))}
          </ul>
          {shown.groups.length > mostGroups ? (
            <p className="quiet">and {shown.groups.length - mostGroups} more</p>
          ) : null}
        </div>
      )}
    </SignatureDialog>
  )
}

/** Takes the merge of an entry back. */
export function TakeBackMergeDialog({
  entry,
  into,
  onClose,
}: {
  entry: CatalogueChoice
  into: string
  onClose(): void
}) {
  const takeBack = useAction('catalogue.takeBackMerge')
  return (
    <SignatureDialog
      title={`${entry.fields.name} is not ${into}`}
      explains="Its names stand for it again, and groups that became one are two."
      button="Take the merge back"
      pending={takeBack.pending}
      error={takeBack.error}
      onSign={async (signature) =>
        signature !== null && (await takeBack.run({ entryId: entry.entryId, ...signature })) !== null
      }
      onClose={onClose}
    />
  )
}
