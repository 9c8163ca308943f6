/** One step of the format. It is never edited once released; a change of format is a new file with the next number. */
export type Migration = { readonly number: number; readonly title: string; readonly sql: string }
