import { WASTE_CAUSES, type WasteCause } from '../../estimate/waste.ts';
import { node } from './scene-nodes.ts';

/** How each cause of waste is hatched: lines at so many degrees, so far apart (mm on the sheet); a second angle crosses them. */
const HATCHES: Readonly<Record<WasteCause, readonly [spacing: number, ...angles: number[]]>> = {
  blanks: [0],
  gripper: [6, 0],
  tail: [6, 90],
  'side-margins': [6, 45],
  'colour-bar': [3, 90],
  'keep-outs': [6, 0, 90],
  gaps: [3, 135],
  between: [8, 45, 135],
  edges: [14, 135],
};

/**
 * Patterns for all causes; `prefix` keeps those of several pictures apart. A pattern is drawn in the axes of what it fills: where
 * `yAxis` runs up, it is turned over once more, so that lines lean as in a key, whose y runs down.
 */
export function hatchPatterns(prefix: string, scale: number, yAxis: 'up' | 'down'): SVGElement[] {
  const over = yAxis === 'up' ? 'scale(1 -1) ' : '';
  return WASTE_CAUSES.filter((cause) => cause !== 'blanks').map((cause) => {
    const [spacing, ...angles] = HATCHES[cause];
    const size = spacing * scale;
    const pattern = node('pattern', { id: `${prefix}${cause}`, width: String(size), height: String(size), patternUnits: 'userSpaceOnUse', patternTransform: `${over}rotate(${angles[0]})` });
    const lines = angles.length > 1 ? `M0 0H${size}M0 0V${size}` : `M0 0H${size}`;
    pattern.append(node('path', { d: lines, class: 'hatch-line', 'stroke-width': String(scale * 0.9) }));
    return pattern;
  });
}
