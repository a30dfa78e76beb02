import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** Lower-case hexadecimal SHA-256: the same drawing file has the same one on every machine. */
export function fingerprintOf(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}
