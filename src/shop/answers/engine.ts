import { readFileSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fingerprintOf } from '../../dieline/fingerprint.ts';

/** Characters of the engine's fingerprint that are kept: a chance of one in 10¹⁹ that two engines share it. */
const LENGTH = 16;

let known: string | undefined;

/**
 * Which engine this is: a fingerprint of every module that an answer can depend on, as they run here, and of the versions
 * of the packages beneath them. Equal engines give equal answers.
 */
export function engineVersion(): string {
  known ??= fingerprintOf(new TextEncoder().encode(parts().join('\0'))).slice(0, LENGTH);
  return known;
}

function parts(): string[] {
  const here = fileURLToPath(import.meta.url);
  const source = join(dirname(here), '..', '..');
  const start = join(source, 'pipeline', `nest-task${extname(here)}`);
  const texts = new Map<string, string>();
  const open = [start];
  while (open.length > 0) {
    const file = open.pop()!;
    if (texts.has(file)) continue;
    const text = readFileSync(file, 'utf8');
    texts.set(file, text);
    for (const [, target] of text.matchAll(/(?:from|import)\s*\(?\s*['"](\.[^'"]+)['"]/g)) open.push(join(dirname(file), target));
  }
  const { dependencies } = JSON.parse(readFileSync(join(source, '..', 'package.json'), 'utf8')) as { dependencies: Record<string, string> };
  const packages = ENGINE_PACKAGES.map((name) => `${name} ${dependencies[name]}`);
  return [...packages, ...[...texts.keys()].toSorted().map((file) => texts.get(file)!)];
}

/** Packages that the engine computes with. */
const ENGINE_PACKAGES = ['clipper2-ts', 'flatbush', 'highs'];
