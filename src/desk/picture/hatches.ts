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

/** Patterns for all causes; `prefix` keeps those of several pictures apart. */
export function hatchPatterns(prefix: string, scale: number): SVGElement[] {
  return WASTE_CAUSES.filter((cause) => cause !== 'blanks').map((cause) => {
    const [spacing, ...angles] = HATCHES[cause];
    const size = spacing * scale;
    const pattern = node('pattern', { id: `${prefix}${cause}`, width: String(size), height: String(size), patternUnits: 'userSpaceOnUse', patternTransform: `rotate(${angles[0]})` });
    const lines = angles.length > 1 ? `M0 0H${size}M0 0V${size}` : `M0 0H${size}`;
    pattern.append(node('path', { d: lines, class: 'hatch-line', 'stroke-width': String(scale * 0.9) }));
    return pattern;
  });
}
