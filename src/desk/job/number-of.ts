/** `5 000`, `5000`, `0,35`; undefined for an empty field. */
export function numberOf(text: string): number | 'fault' | undefined {
  const plain = text.replace(/[\s\u202f]/g, '').replace(',', '.');
  if (plain === '') return undefined;
  const value = Number(plain);
  return Number.isFinite(value) && value >= 0 ? value : 'fault';
}
