/** A key, or keys, as printed on a keyboard. Not read out: the control it stands in names itself. */
export function Keys({ keys }: { keys: string }) {
  return (
    <span className="keys" aria-hidden="true">
      {keys.split(' ').map((key) => (
        <kbd key={key}>{key}</kbd>
      ))}
    </span>
  )
}
