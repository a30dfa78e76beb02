/** Characters that XML 1.0 cannot hold in any form. */
// eslint-disable-next-line no-control-regex
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text as it stands between tags or in quotes, in XML and HTML. */
export function escapeXml(text: string): string {
  return text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"']/g, (letter) => ENTITIES[letter]!);
}

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One element; attribute values are escaped, undefined ones left out, `content` is markup already. */
export function element(name: string, attributes: Attributes, content?: string): string {
  const written = Object.entries(attributes).map(([key, value]) => (value === undefined ? '' : ` ${key}="${escapeXml(String(value))}"`)).join('');
  return content === undefined ? `<${name}${written}/>` : `<${name}${written}>${content}</${name}>`;
}
