import type { ComponentProps } from 'react'
import type { CatalogueKind } from '#contract/programme/catalogue.ts'
import { entryDetail } from '#words/programme/catalogueWords.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { isAmong } from '../../widgets/combobox/comboboxOptions.ts'
import { ListField } from '../../widgets/ListField.tsx'
import { entersNew } from './CatalogueField.tsx'

/** Several names out of the catalogue; those that it lacks are named, and entered with the record that names them. */
export function CatalogueListField({
  kind,
  hint,
  ...field
}: { kind: CatalogueKind } & Omit<ComponentProps<typeof ListField>, 'options'>) {
  const { value: choices } = useAnswer('catalogue.choices', { kind })
  const options = (choices ?? []).map(({ fields }) => ({ value: fields.name, detail: entryDetail(fields) }))
  const isNew = choices !== null && field.values.some((name) => !isAmong(options, name))
  const hints = [hint, isNew ? entersNew : undefined].filter((one) => one !== undefined)
  return <ListField {...field} options={options} {...(hints.length === 0 ? {} : { hint: hints.join(' ') })} />
}
