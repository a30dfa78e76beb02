import { mirrorBlank } from '../../../dieline/mirror-blank.ts';
import { degreesOf } from '../../../geometry/turn.ts';
import { gangOutlines } from '../../../pipeline/gang/outlines.ts';
import { readOutlinesJob } from '../../../pipeline/gang/outlines-job.ts';
import type { Host } from '../host.ts';
import type { OutlinesAnswer, OutlinesAsk } from '../protocol.ts';
import { dielineOf } from './read.ts';

const SEED = 1;

/** Drawings ganged on common forms: the job that `gang` reads from a file, its drawings from the page. */
export async function gangDrawings(ask: OutlinesAsk, { control, pool, goesOn }: Pick<Host<'outlines'>, 'control' | 'pool' | 'goesOn'>): Promise<OutlinesAnswer> {
  const { forms: allowed, costs, effort } = ask;
  const byId = new Map(ask.designs.map((design) => [design.id, design]));
  const job = await readOutlinesJob(recordOf(ask), 'outlines', {
    // Records stand in the job itself: nothing is loaded.
    json: (path) => path,
    nameOf: (file) => file,
    drawing: async (id) => {
      const { source, drawnFrom } = byId.get(id)!;
      const dieline = await dielineOf(source, ask.remembered, goesOn);
      return drawnFrom === 'inside' ? { ...dieline, blanks: dieline.blanks.map(mirrorBlank) } : dieline;
    },
  });
  const facts = await gangOutlines(job, { effort, seed: SEED, runner: pool, stop: () => (control.stopped() ? 'interrupted' : undefined) });
  const { forms, overs, cost, lowerBound, separate, apart } = facts;
  return {
    forms: forms.map(({ counts, pressings, layout }) => ({ counts, pressings, file: layout! })),
    overs,
    cost,
    lowerBound,
    separate: separate && { forms: separate.forms, pressings: separate.pressings },
    apart,
    doubtful: job.doubtful,
  };

  function recordOf({ laying, designs }: OutlinesAsk): unknown {
    const { sheet, settings, machines, bleedMeeting, sheetGrain, rotations, grain } = laying;
    return {
      ...settings,
      ...machines,
      sheet: `${sheet.width}x${sheet.height}`,
      bleedMeeting,
      sheetGrain,
      forms: allowed,
      costs,
      designs: designs.map(({ id, source, quantity, overs: limits, inks, board, coating, delivery, foodClass }) => ({
        file: id, id, quantity, overs: limits, grain, inks, board, coating, delivery, foodClass,
        rotations: rotations?.map(degreesOf),
        blank: source.kind === 'file' ? source.options.blank : undefined,
      })),
    };
  }
}
