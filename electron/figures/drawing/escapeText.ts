import { visibleText } from '#words/visibleText.ts'

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/**
 * Text that stands for itself inside an element or an attribute, in HTML and in XML alike. What cannot be seen is written as
 * its number, and so is what XML cannot hold; the two noncharacters among that become the replacement character.
 *
 * Source: Extensible Markup Language 1.0 (Fifth Edition), productions 2 (Char) and 14 (CharData).
 */
export function escapeText(text: string): string {
  return visibleText(text)
    .replace(/[\ufffe\uffff]/g, '\ufffd')
    .replace(/[&<>"']/g, (character) => entities[character]!)
}
