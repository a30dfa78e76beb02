import { inputError } from '../../base/issue.ts';
import { READING_LIMITS } from '../limits.ts';
import { limitPassed } from '../xml.ts';

/** Whether bytes begin like a DXF file in text form: a group code, then a section or a comment. */
export function isDxf(head: string): boolean {
  return /^\s*(999\s*[\r\n]|0\s*[\r\n]+\s*SECTION\b)/.test(head);
}

/** Whether bytes begin like the binary form. */
export function isBinaryDxf(head: string): boolean {
  return /^\w{1,20} Binary DXF\r\n/.test(head);
}

/** UTF-8, or where the bytes are not, the code page that the header names. Throws InputError `drawing-limit`. */
export function decodeDxf(bytes: Uint8Array): string {
  if (bytes.length > READING_LIMITS.fileBytes) throw limitPassed('bytes', READING_LIMITS.fileBytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const head = String.fromCharCode(...bytes.subarray(0, 8192));
    return decodeAs(/\$DWGCODEPAGE\s+3\s+ANSI_(\d+)/i.exec(head)?.[1] ?? '1252', bytes);
  }
}

function decodeAs(codePage: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder(CODE_PAGES[codePage] ?? `windows-${codePage}`).decode(bytes);
  } catch {
    throw inputError('drawing-not-text', { facts: { encoding: `ANSI_${codePage}` } });
  }
}

const CODE_PAGES: Readonly<Record<string, string>> = { 932: 'shift_jis', 936: 'gbk', 949: 'euc-kr', 950: 'big5', 874: 'windows-874' };
