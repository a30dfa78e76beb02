/** A name that nothing else has: 128 bits of chance. `crypto.randomUUID` is missing on a page that a server hands out over plain HTTP. */
export function newId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
