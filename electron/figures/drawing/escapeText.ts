const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/**
 * Text that stands for itself inside an element or an attribute, in HTML and in XML alike. What XML cannot hold (control
 * characters, half a pair of surrogates) becomes the replacement character.
 *
 * Source: Extensible Markup Language 1.0 (Fifth Edition), productions 2 (Char) and 14 (CharData).
 */
export function escapeText(text: string): string {
  return (
    text
      .toWellFormed()
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not pass
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '\ufffd')
      .replace(/[&<>"']/g, (character) => entities[character]!)
  )
}
