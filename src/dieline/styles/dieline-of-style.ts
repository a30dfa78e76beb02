import { inputError } from '../../base/issue.ts';
import type { CurvePath } from '../../geometry/curve.ts';
import { loopArea } from '../../geometry/loop-area.ts';
import { boxOfLoop } from '../blanks.ts';
import type { Blank, Dieline, Role, RulePath } from '../dieline.ts';
import { fingerprintOf } from '../fingerprint.ts';
import { layFlat, type FlatBlank } from './lay-flat.ts';
import { resolveValues, type Values } from './parameter.ts';
import type { Style } from './style.ts';
import { STYLES } from './styles.ts';

/** A blank made from dimensions, before it becomes a dieline like any other. */
export interface StyledBlank {
  readonly style: Style;
  /** Every dimension and allowance, usual ones filled in, mm. */
  readonly values: Values;
  readonly flat: FlatBlank;
}

/** Throws InputError `style-unknown`. */
export function styleOf(id: string): Style {
  const style = STYLES.find((candidate) => candidate.id === id);
  if (!style) throw inputError('style-unknown', { where: id, facts: { styles: STYLES.map((known) => known.id).join(', ') } });
  return style;
}

/** Dimensions and allowances in mm by name. Throws InputError naming each that is missing, unknown or out of limits. */
export function styledBlank(id: string, parameters: Values): StyledBlank {
  const style = styleOf(id);
  const values = resolveValues(style, parameters);
  return { style, values, flat: layFlat(style.build(values)) };
}

/**
 * The dieline of a style: one blank, millimetres, y up, with the style's usual grain unless another is given. Its
 * fingerprint is that of the style's name and all its values, since there is no drawing. Throws as `styledBlank` does.
 */
export function dielineOfStyle(id: string, parameters: Values, grain?: 'x' | 'y' | 'any'): Dieline {
  return dielineOfBlank(styledBlank(id, parameters), grain);
}

export function dielineOfBlank({ style, values, flat }: StyledBlank, grain: 'x' | 'y' | 'any' = style.grain?.along ?? 'any'): Dieline {
  return {
    blanks: [blankOf(flat)],
    rest: [],
    ...(grain === 'any' ? {} : { grain }),
    scale: { mmPerUnit: 1, from: 'unit' },
    yAxis: 'down',
    fingerprint: fingerprintOf(new TextEncoder().encode(JSON.stringify([style.id, values]))),
    issues: [],
  };
}

function blankOf({ outline, openings, slits, creases, gluing }: FlatBlank): Blank {
  const rule = (role: Role, source: string, closed: boolean) => (curves: CurvePath): RulePath => ({ role, reason: 'name', curves, closed, source });
  return {
    number: 1,
    outline,
    openings,
    rules: [
      rule('Cutting', 'outline', true)(outline),
      ...openings.map(rule('Cutting', 'opening', true)),
      ...slits.map(rule('Cutting', 'slit', false)),
      ...creases.map(rule('Creasing', 'crease', false)),
      ...gluing.map(({ area, on }) => rule('Gluing', on, true)(area)),
    ],
    box: boxOfLoop(outline),
    areaMm2: Math.abs(loopArea(outline)),
  };
}
