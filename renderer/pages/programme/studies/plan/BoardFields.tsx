import { useState } from 'react'
import { naturalKey } from '#domain/text/naturalOrder.ts'
import { entryDetail, ownerNameOf } from '#words/programme/catalogueWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useAnswer } from '../../../../host/useAnswer.ts'
import { entersNew } from '../../../../parts/catalogue/CatalogueField.tsx'
import { isAmong } from '../../../../widgets/combobox/comboboxOptions.ts'
import { Field } from '../../../../widgets/Field.tsx'
import { ListField } from '../../../../widgets/ListField.tsx'
import { type Boards, typedBlocks, withBoards, withMoreBoards } from './boardList.ts'

/** The boards that blocks are cut from: out of the catalogue, or entered there with the study, each with how many blocks it gives. */
export function BoardFields({
  boards,
  wood,
  error,
  onBoards,
}: {
  boards: Boards
  /** Whose boards can be chosen; '': all. */
  wood: string
  error: string | null
  onBoards(boards: Boards): void
}) {
  const [blocks, setBlocks] = useState(boards.length === 0 ? '' : String(boards.at(-1)!.blocks))
  const choices = useAnswer('catalogue.choices', { kind: 'board' }).value
  const options = (choices ?? [])
    .filter(({ fields }) => wood === '' || naturalKey(ownerNameOf(fields)) === naturalKey(wood))
    .map(({ fields }) => ({ value: fields.name, detail: entryDetail(fields) }))
  const isNew = choices !== null && boards.some(({ name }) => !isAmong(options, name))
  const isNamed = new Set(boards.map(({ name }) => name))
  return (
    <>
      <div className="field-pair">
        <Field
          label="Blocks that a board gives"
          inputMode="numeric"
          value={blocks}
          error={
            blocks.trim() === '' || typedBlocks(blocks) !== null ? null : 'Write a whole number from 1 to 100,000.'
          }
          hint="Of each that is added next."
          onChange={(event) => setBlocks(event.currentTarget.value)}
        />
        <ListField
          label="Boards"
          values={boards.map((board) => `${board.name}: ${countOf(board.blocks, 'block')}`)}
          placeholder="plank 1, then Enter, plank 2 …"
          error={error}
          hint={`Every adhesive is spread over the boards as evenly as they allow. Empty: blocks are not allocated to boards.${isNew ? ` ${entersNew}` : ''}`}
          options={options.filter(({ value }) => !isNamed.has(value))}
          onAdd={(texts) => {
            const added = withBoards(boards, texts, blocks)
            if ('error' in added) return added.error
            onBoards(added.boards)
            return null
          }}
          onRemove={(index) => onBoards(boards.toSpliced(index, 1))}
        />
      </div>
      <MoreBoards onAdd={(name, count, each) => onBoards(withMoreBoards(boards, name, count, each))} />
    </>
  )
}

/** Adds many boards that are alike. */
function MoreBoards({ onAdd }: { onAdd(name: string, count: number, blocks: number): void }) {
  const [typed, setTyped] = useState({ count: '', name: 'board', blocks: '' })
  const whole = (text: string, most: number) =>
    /^[1-9]\d*$/.test(text.trim()) && Number(text) <= most ? Number(text) : null
  const [count, blocks] = [whole(typed.count, 1000), typedBlocks(typed.blocks)]
  const ready = count !== null && blocks !== null && typed.name.trim() !== ''
  const add = () => ready && onAdd(typed.name.trim(), count, blocks)
  const part = (key: keyof typeof typed, name: string) => (
    <input
      aria-label={name}
      value={typed[key]}
      maxLength={60}
      onChange={(event) => setTyped({ ...typed, [key]: event.currentTarget.value })}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || !ready) return
        event.preventDefault()
        add()
      }}
    />
  )
  return (
    <div className="age-rule">
      <span>
        {part('count', 'How many boards to add')} boards named {part('name', 'Name of the boards to add')} 1, 2, … that
        give {part('blocks', 'Blocks that each board to add gives')} blocks each
      </span>
      <button type="button" className="button button-small" aria-disabled={!ready} onClick={add}>
        Add them
      </button>
    </div>
  )
}
