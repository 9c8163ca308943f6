import './readingFigures.css'

/** Figures of the reading beside each other, each under its name. */
export function ReadingFigures({ figures }: { figures: readonly { name: string; value: string }[] }) {
  return (
    <dl className="reading-figures">
      {figures.map(({ name, value }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  )
}
