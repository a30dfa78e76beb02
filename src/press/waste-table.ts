import { z } from 'zod';
import { STAGES } from './stages.ts';

const count = z.int().min(0).max(100_000);
/** Percent of what goes in that is lost while running. */
const percent = z.number().min(0).max(50);

const byColours = z.array(z.strictObject({ fromColours: z.int().min(1), setUpPerPlate: count, runningPercent: percent })).min(1);

/** Makeready and running waste of a shop. Set-up in sheets (cartons for gluing and packing). */
export const wasteTableSchema = z.strictObject({
  name: z.string(),
  source: z.string().optional(),
  printing: z.strictObject({
    setUpPerMachine: count,
    /** The row with the most `fromColours` not above the job's colours counts. */
    colours: byColours,
    varnish: z.strictObject({ setUpPerUnit: count, setUpPerPlate: count, runningPercent: percent }),
  }),
  stages: z.partialRecord(z.enum(STAGES.filter((stage) => stage !== 'printing')), z.strictObject({ setUp: count, runningPercent: percent })),
});
export type WasteTable = z.infer<typeof wasteTableSchema>;

/**
 * Published German practice (print-assistant.de, "Papierzuschuss berechnen"). Printing, die-cutting set-up, and the
 * running waste of embossing, die-cutting and gluing are the published figures; the set-up of embossing is that of
 * die-cutting. Not published, common practice: foil as embossing, coating off line as a machine with one varnish plate,
 * nothing lost in stripping, packing and the set-up of the gluer. The varnish unit's own set-up of 30 sheets is not
 * charged: the unit runs in line.
 */
export const GERMAN_TABLE: WasteTable = {
  name: 'published German table',
  source: 'print-assistant.de, Papierzuschuss berechnen',
  printing: {
    setUpPerMachine: 30,
    colours: [
      { fromColours: 1, setUpPerPlate: 15, runningPercent: 0.6 },
      { fromColours: 2, setUpPerPlate: 25, runningPercent: 0.8 },
      { fromColours: 4, setUpPerPlate: 40, runningPercent: 1.1 },
    ],
    varnish: { setUpPerUnit: 0, setUpPerPlate: 10, runningPercent: 0.1 },
  },
  stages: {
    coating: { setUp: 40, runningPercent: 0.1 },
    foil: { setUp: 40, runningPercent: 1 },
    embossing: { setUp: 40, runningPercent: 1 },
    'die-cutting': { setUp: 40, runningPercent: 1 },
    stripping: { setUp: 0, runningPercent: 0 },
    gluing: { setUp: 0, runningPercent: 1 },
    packing: { setUp: 0, runningPercent: 0 },
  },
};
