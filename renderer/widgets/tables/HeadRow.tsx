/** The heads of a table's columns: those of words, then those of numbers. */
export function HeadRow({ words, numbers }: { words: readonly string[]; numbers: readonly string[] }) {
  return (
    <thead>
      <tr>
        {words.map((head) => (
          <th key={head} scope="col">
            {head}
          </th>
        ))}
        {numbers.map((head) => (
          <th key={head} scope="col" className="numeric">
            {head}
          </th>
        ))}
      </tr>
    </thead>
  )
}
