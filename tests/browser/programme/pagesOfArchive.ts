/** Pages that hold at every size and in both themes on a real archive, as `programmePages.spec.ts` looks at them. */
export const pagesOfArchive = ['due', 'labels', 'catalogue', 'catalogue-entry']
