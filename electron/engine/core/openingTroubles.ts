import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'

/** What went wrong while an archive was opened, so that the rest of it opens and a page can say what is missing. */
export type OpeningTroubles = {
  /** Resolves with what was read or, where that fails, with `instead`; `without` begins the sentence that says so. */
  orElse<T>(reading: Promise<T>, instead: T, without: string): Promise<T>
  add(trouble: TroubleMessage): void
  /** All of them as one; null: nothing went wrong. */
  asOne(): TroubleMessage | null
}

/** Begins with none. */
export function openingTroubles(): OpeningTroubles {
  const troubles: TroubleMessage[] = []
  return {
    async orElse(reading, instead, without) {
      try {
        return await reading
      } catch (thrown) {
        const { code, message, hint } = troubleFrom(thrown)
        troubles.push({ code, message: `${without}: ${message}`, hint })
        return instead
      }
    },
    add: (trouble) => void troubles.push(trouble),
    asOne() {
      const [first] = troubles
      if (first === undefined) return null
      const hints = new Set(troubles.map(({ hint }) => hint))
      return { code: first.code, message: troubles.map(({ message }) => message).join(' '), hint: [...hints].join(' ') }
    },
  }
}
