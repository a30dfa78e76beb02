import { inputError } from '../base/issue.ts';
import { READING_LIMITS } from './limits.ts';
import { limitPassed } from './xml.ts';

/** The file's characters, by its byte order mark or its XML declaration; UTF-8 without either. Throws InputError. */
export function decodeDrawing(bytes: Uint8Array): string {
  if (bytes.length > READING_LIMITS.fileBytes) throw limitPassed('bytes', READING_LIMITS.fileBytes);
  if (isCompressed(bytes)) throw inputError('drawing-compressed');
  const encoding = encodingOf(bytes);
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    throw inputError('drawing-not-text', { facts: { encoding } });
  }
}

/** By gzip, as svgz is. */
export function isCompressed(bytes: Uint8Array): boolean {
  return bytes[0] === 0x1f && bytes[1] === 0x8b;
}

function encodingOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  return /^\s*<\?xml[^>]*\sencoding\s*=\s*["']([\w.-]+)["']/.exec(head)?.[1] ?? 'utf-8';
}
