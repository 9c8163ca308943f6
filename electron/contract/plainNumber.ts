const numberText = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/

/**
 * The number of a text as files and commands write it: sign, digits, point, exponent. null: it is none, or it lies beyond
 * ±(2^53 − 1), where not every whole number has a value of its own and reading would round it.
 */
export function plainNumber(text: string): number | null {
  if (!numberText.test(text)) return null
  const number = Number(text)
  return Math.abs(number) <= Number.MAX_SAFE_INTEGER ? number : null
}
