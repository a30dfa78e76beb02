import { LAYOUT_FORMAT, LAYOUT_VERSION, type LayoutFile } from '../../layout/layout-file.ts';
import type { Job, KeptLayout } from './job.ts';
import { isObject, isText } from './versions-file.ts';

/** What a job file says was found: contents nobody has judged yet. Limits and proofs are not in it, they would have to be believed. */
export interface FoundInFile {
  readonly layouts: readonly UnjudgedLayout[];
  /** Id of the one that was shown. */
  readonly chosen: string | undefined;
  /** Forms of several outlines. */
  readonly forms: readonly unknown[];
  readonly asked: string;
}

export type UnjudgedLayout = Pick<KeptLayout, 'id' | 'source' | 'inputs' | 'byHand' | 'locked'> & { readonly layout: unknown };

/** More is no job of this desk. */
const MOST_LAYOUTS = 24;
const MOST_FORMS = 12;
/** What a layout was made from holds every setting and record. */
const LONGEST_INPUTS = 100_000;

/** The part of a job file that holds layouts and forms, each as the content of a layout file. */
export function packedFound({ layouts, outlines: { plan } }: Pick<Job, 'layouts' | 'outlines'>): object {
  return {
    layouts: layouts.slice(-MOST_LAYOUTS).map(({ id, file, source, inputs, byHand, locked }) => ({ id, source, inputs, byHand, locked, layout: contentOf(file) })),
    ...(plan && { forms: { asked: plan.asked, layouts: plan.forms.map(({ file }) => contentOf(file)) } }),
  };
}

function contentOf(file: LayoutFile): object {
  return { format: LAYOUT_FORMAT, version: LAYOUT_VERSION, units: 'mm', ...file };
}

export function foundInFile(content: Readonly<Record<string, unknown>>): FoundInFile {
  const { layouts, chosen, forms } = content;
  const own = isObject(forms) ? forms : {};
  return {
    layouts: listOf(layouts, MOST_LAYOUTS).flatMap((given) => layoutOf(given) ?? []),
    chosen: isText(chosen) ? chosen : undefined,
    forms: listOf(own['layouts'], MOST_FORMS),
    asked: typeof own['asked'] === 'string' && own['asked'].length <= LONGEST_INPUTS ? own['asked'] : '',
  };
}

function layoutOf(given: unknown): UnjudgedLayout | undefined {
  if (!isObject(given) || !isObject(given['layout'])) return undefined;
  const { id, source, inputs, byHand, locked, layout } = given;
  if (!isText(id) || typeof inputs !== 'string' || inputs.length > LONGEST_INPUTS) return undefined;
  return {
    id, inputs, layout,
    source: isText(source) ? source : '',
    ...(byHand === true && { byHand }),
    ...(Array.isArray(locked) && locked.every((number) => Number.isInteger(number)) && { locked: locked as number[] }),
  };
}

function listOf(given: unknown, most: number): readonly unknown[] {
  return Array.isArray(given) ? given.slice(0, most) : [];
}
