import type { CatalogueFields, CatalogueKind } from '#contract/programme/catalogue.ts'
import { naturalKey } from '#domain/text/naturalOrder.ts'
import { entryDetail, ownerNameOf } from '#words/programme/catalogueWords.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { Combobox } from '../../widgets/combobox/Combobox.tsx'
import type { FieldProps } from '../../widgets/Field.tsx'

/** Said of a name that is to be entered with the record that names it. */
export const entersNew = 'New: it is entered in the catalogue too.'

/** A name out of the catalogue; one that it lacks is entered with the record that names it. */
export function CatalogueField({
  kind,
  of = null,
  onValue,
  newWords = entersNew,
  ask = () => null,
  ...field
}: {
  kind: CatalogueKind
  /** The adhesive whose lots, or the wood whose boards, can be chosen; null: all. */
  of?: string | null
  value: string
  /** `chosen` null: it was typed. */
  onValue(value: string, chosen: CatalogueFields | null): void
  /** Said of a name that the catalogue lacks. */
  newWords?: string
  /** What is doubtful about naming an entry here; null: nothing. */
  ask?(fields: CatalogueFields): string | null
} & Omit<FieldProps, 'value' | 'onChange' | 'question' | 'list'>) {
  const { value: choices } = useAnswer('catalogue.choices', { kind })
  const options = (choices ?? [])
    .filter(({ fields }) => of === null || of === '' || naturalKey(ownerNameOf(fields)) === naturalKey(of))
    .map(({ fields }) => ({ value: fields.name, detail: entryDetail(fields), question: ask(fields), fields }))
  return (
    <Combobox
      {...field}
      options={options}
      onValue={(value, chosen) => onValue(value, chosen?.fields ?? null)}
      newWords={choices === null ? '' : newWords}
    />
  )
}
