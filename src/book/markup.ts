/** Text as XML and SVG take it: no sign of it is markup. */
const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

export const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => SIGNS[sign] ?? sign);
