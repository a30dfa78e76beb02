import { useDesk } from '../desk-context.ts';
import type { KeptLayout } from '../job/job.ts';
import { upsOf, yieldOf } from '../job/layouts.ts';
import { LayoutPicture } from '../picture/layout-picture.tsx';
import { useWords, type Words } from '../words/words.ts';

/** Layouts side by side with the chosen one, differences named in words. */
export function Comparison() {
  const { desk } = useDesk();
  const words = useWords();
  const { say } = words;
  const chosen = desk.chosen.value;
  const beside = desk.layouts.value.filter(({ id }) => desk.job.value.beside.includes(id) && id !== chosen?.id);
  if (!chosen || beside.length === 0) return null;
  return (
    <section class="comparison" aria-label={say('side-by-side')}>
      <h3>{say('side-by-side')}</h3>
      <div class="side-by-side">
        {[chosen, ...beside].map((layout, i) => (
          <figure key={layout.id}>
            <LayoutPicture isSmall layout={layout} name={`beside${i}`} />
            <figcaption>
              <strong>{say('ups', { ups: upsOf(layout) })}</strong>{' '}
              {i === 0 ? say('the-chosen-one') : differences(layout, chosen, words).join(' ')}
            </figcaption>
          </figure>
        ))}
      </div>
    </section>
  );
}

/** What sets a layout apart from the chosen one. */
function differences(layout: KeptLayout, chosen: KeptLayout, { say, format, foundBy }: Words): string[] {
  const more = upsOf(layout) - upsOf(chosen);
  const share = yieldOf(layout) - yieldOf(chosen);
  const steps = stepsOf(layout);
  return [
    more === 0 ? say('as-many-ups') : say(more > 0 ? 'more-ups' : 'fewer-ups', { count: Math.abs(more) }),
    ...(share === 0 ? [] : [say('yield-differs', { by: `${share > 0 ? '+' : '−'}${format.percent(Math.abs(share))}` })]),
    say('steps-of-layout', steps),
    say('found-by', { source: foundBy(layout) }),
  ];
}

/** Different rows and rotations: the fewer, the simpler the die and its stripping tool. */
function stepsOf({ file: { placements } }: KeptLayout): { rows: number; rotations: number } {
  return { rows: new Set(placements.map(({ y }) => y)).size, rotations: new Set(placements.map(({ rotation }) => rotation)).size };
}
