import pc from 'picocolors';
import { PLAIN, type TextStyle } from '../render/report-text.ts';

/** Colours only where a person looks; NO_COLOR is respected. */
export function terminalStyle(): TextStyle {
  return pc.isColorSupported && process.stdout.isTTY ? { strong: pc.bold, quiet: pc.dim, accent: pc.cyan } : PLAIN;
}
