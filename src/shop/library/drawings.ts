import { fingerprintOf } from '../../dieline/fingerprint.ts';
import type { Library } from './open-library.ts';

/** Keeps a drawing's bytes once, whatever number of cartons and dies it belongs to. Returns its fingerprint. */
export function keepDrawing(library: Library, bytes: Uint8Array): string {
  const fingerprint = fingerprintOf(bytes);
  library.run('INSERT INTO drawing (fingerprint, bytes) VALUES (?, ?) ON CONFLICT DO NOTHING', fingerprint, Buffer.from(bytes));
  return fingerprint;
}

export function drawingNamed(library: Library, fingerprint: string): Uint8Array | undefined {
  const [row] = library.rows<{ bytes: ArrayBuffer }>('SELECT bytes FROM drawing WHERE fingerprint = ?', fingerprint);
  return row && new Uint8Array(row.bytes);
}
