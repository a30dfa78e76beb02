import type { Stage } from '../../press/stages.ts';

export const GERMAN_STAGES: Readonly<Record<Stage, string>> = {
  printing: 'Drucken', coating: 'Lackieren', foil: 'Folienprägen', embossing: 'Blindprägen', 'die-cutting': 'Stanzen', stripping: 'Ausbrechen', gluing: 'Kleben', packing: 'Verpacken',
};
