const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** A text as it stands in HTML, between tags or in an attribute. */
export const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (character) => ENTITIES[character]!);
