const SIGNS: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text with the signs that mean something to XML and HTML told by name. */
export const withoutMarkup = (text: string): string => text.replace(/[&<>"']/g, (sign) => SIGNS[sign]!);
