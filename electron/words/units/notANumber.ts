/** What is said of a field that holds no number; `wanted`: what to write there. */
export function notANumber(text: string, wanted: string): string {
  return `“${text.trim()}” is not a number. Write ${wanted}.`
}
