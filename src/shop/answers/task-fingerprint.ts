import { fingerprintOf } from '../../dieline/fingerprint.ts';
import type { Design, LayoutFile } from '../../layout/layout-file.ts';
import type { SoundLayout } from '../../layout/sound.ts';
import type { NestAnswer, NestTask } from '../../pipeline/nest-task.ts';

/** Designs go by this name in tasks and answers, so that two cartons of one outline share an answer. */
export const NAMELESS = 'blank';

/**
 * The task without what cannot change the answer: names, the drawing's bytes, rules inside the blank. True outline and
 * openings stay, since the judge measures them.
 */
export function bareTask(task: NestTask): NestTask {
  const { problem, design } = task;
  const { outline, openings } = design.drawing ?? {};
  return {
    ...task,
    problem: { ...problem, parts: problem.parts.map((part) => ({ ...part, id: NAMELESS })) },
    design: { ...design, id: NAMELESS, drawing: { paths: [], ...(outline !== undefined && { outline }), ...(openings && { openings }) } },
  };
}

/** Of all that the answer depends on but the engine: outline, rules, sheet, effort, seed. Lower-case hexadecimal SHA-256. */
export function taskFingerprint(bare: NestTask): string {
  return fingerprintOf(new TextEncoder().encode(JSON.stringify(ordered(bare))));
}

/** The same content has the same text, in whatever order its fields were made. */
function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).filter(([, field]) => field !== undefined).toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([key, field]) => [key, ordered(field)]));
}

/** The layout of a bare task as the layout of a design with its name and drawing. */
export function named(layout: LayoutFile, design: Design): LayoutFile {
  const { result } = layout;
  const cell = result?.['bestCell'] as { placements?: readonly object[] } | undefined;
  const renamed = cell?.placements && { ...cell, placements: cell.placements.map((placed) => ({ ...placed, design: design.id })) };
  return {
    ...layout,
    designs: [design],
    placements: layout.placements.map((placed) => ({ ...placed, design: design.id })),
    ...(result && { result: renamed ? { ...result, bestCell: renamed } : result }),
  };
}

/** Names change nothing that the judge looks at, so what was sound stays so. */
export function namedAnswer(answer: NestAnswer, design: Design): NestAnswer {
  return { ...answer, layouts: answer.layouts.map(({ file, ranked }) => ({ ranked, file: named(file, design) as SoundLayout })) };
}
