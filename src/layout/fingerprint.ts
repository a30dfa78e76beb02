import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { writeLayoutFile, type LayoutFile } from './layout-file.ts';

/**
 * Lower-case hexadecimal SHA-256 of everything about a layout that the judge believes, as the layout file writes it.
 * What the maker says of it (`result`) plays no part.
 */
export function layoutFingerprint(layout: LayoutFile): string {
  return bytesToHex(sha256(utf8ToBytes(writeLayoutFile({ ...layout, result: {} }))));
}
