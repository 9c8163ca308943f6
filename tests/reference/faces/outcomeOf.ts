/** What a generator returns when it has been run to its end. */
export function outcomeOf<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
  }
}
