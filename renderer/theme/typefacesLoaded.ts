/**
 * Resolves when every typeface of the page is there, or cannot be had: what a plot or a figure measures after it stays as wide.
 * Asked before anything is shown, since a face is else fetched only when a letter of it is.
 */
export async function typefacesLoaded(faces: Iterable<Pick<FontFace, 'load'>>): Promise<void> {
  await Promise.allSettled([...faces].map((face) => face.load()))
}
