/** Names of blocks that are alike at their beginning are told apart at their end. */
const endLetters = 8
const shortLetters = 14

/** A name that may be longer than its place: the middle gives way, its beginning and end stay, and pointing at it shows all. */
export function LongName({ name }: { name: string }) {
  if (name.length <= shortLetters) return <>{name}</>
  return (
    <span className="long-name" title={name}>
      <span>{name.slice(0, -endLetters)}</span>
      <span>{name.slice(-endLetters)}</span>
    </span>
  )
}
