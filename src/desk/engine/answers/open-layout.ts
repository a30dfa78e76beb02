import { inputError } from '../../../base/issue.ts';
import { judge } from '../../../layout/judge.ts';
import { readLayoutFile } from '../../../layout/layout-file.ts';
import type { Host } from '../host.ts';
import type { FoundLayout, LayoutAsk } from '../protocol.ts';

/** Reads and judges a layout file, whoever made it. */
export function openLayout({ name, bytes }: LayoutAsk, { goesOn }: Pick<Host<'layout'>, 'goesOn'>): FoundLayout {
  const file = readLayoutFile(contentOf(name, bytes), name);
  return { file, state: judge(file, goesOn).state };
}

function contentOf(name: string, bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch (error) {
    throw inputError('json-not-valid', { where: name, facts: { reason: (error as Error).message } });
  }
}
