/** What a sheet, then a carton, goes through, in this order. Stages after `stripping` count cartons, those before count sheets. */
export const STAGES = ['printing', 'coating', 'foil', 'embossing', 'die-cutting', 'stripping', 'gluing', 'packing'] as const;

export type Stage = (typeof STAGES)[number];

const IN_CARTONS: ReadonlySet<Stage> = new Set(['gluing', 'packing']);

export function countsCartons(stage: Stage): boolean {
  return IN_CARTONS.has(stage);
}

/** The verbs people write for the same stages. */
const OTHER_NAMES: Readonly<Record<string, Stage>> = { print: 'printing', coat: 'coating', emboss: 'embossing', 'die-cut': 'die-cutting', strip: 'stripping', glue: 'gluing', pack: 'packing' };

export function stageOf(name: string): Stage | undefined {
  return STAGES.find((stage) => stage === name) ?? OTHER_NAMES[name];
}
