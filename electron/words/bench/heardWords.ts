/** What stands in place of the lines of a port that sent none, by how many bytes it did send. */
export function noLineWords(bytes: number): string {
  return bytes === 0 ? 'nothing was received' : 'no whole line was received'
}
