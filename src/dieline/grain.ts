import type { Drawing } from './drawing.ts';

/** Words for the direction of the board's fibres. */
const GRAIN = /\b(grain|fib(re|er)s? direction|faserrichtung|faserlauf|laufrichtung|sens (des )?fibres?|sens du papier|(sentido|direcci[oó]n) de (la )?fibra|(senso|direzione) (della )?fibra)\b/i;
const ALONG_X = /\b(x|horizontal(e|ly)?|waage?recht|quer|orizzontale)\b|[↔→←⇔]/i;
const ALONG_Y = /\b(y|vertical(e|ly)?|senkrecht|verticale)\b|[↕↑↓⇕]/i;

/**
 * Fibre direction as the drawing says it: words beside the word for grain, the direction in which that text is written
 * when an arrow stands in it, or the line of a group that is named so. Undefined where it says nothing or contradicts
 * itself.
 */
export function grainOf({ texts, lines }: Drawing): 'x' | 'y' | undefined {
  const found = new Set<'x' | 'y'>();
  for (const { content, direction } of texts) {
    if (!GRAIN.test(content)) continue;
    const alongText = Math.abs(direction.x) >= Math.abs(direction.y) ? 'x' : 'y';
    const said = content.replace(GRAIN, ' ');
    const arrow = /[↔→←⇔]/.test(said);
    if (arrow) found.add(alongText);
    else if (ALONG_X.test(said)) found.add('x');
    else if (ALONG_Y.test(said)) found.add('y');
  }
  for (const { source, curves } of lines) {
    const name = source.levels.flatMap(({ names }) => names).find((candidate) => GRAIN.test(candidate.replace(/[-_]+/g, ' ')));
    if (name === undefined) continue;
    const said = name.replace(/[-_]+/g, ' ').replace(GRAIN, ' ');
    const across = Math.abs(curves[0].to.x - curves[0].from.x) > Math.abs(curves[curves.length - 1].to.y - curves[0].from.y);
    found.add(ALONG_X.test(said) ? 'x' : ALONG_Y.test(said) ? 'y' : across ? 'x' : 'y');
  }
  return found.size === 1 ? [...found][0] : undefined;
}
