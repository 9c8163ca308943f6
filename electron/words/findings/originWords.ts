/** Which results a figure of findings shows, and how torn wood is treated in it. */
export function resultsAbout(treatment: string, dataSha256: string): string {
  return `Torn wood: ${treatment}. Data ${dataSha256.slice(0, 16)}.`
}
