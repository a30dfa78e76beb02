import type { Role } from '../dieline/dieline.ts';
import type { CurvePath } from '../geometry/curve.ts';
import type { Scale } from './scale.ts';
import type { Look, SceneSymbol } from './scene.ts';
import { drawn, polyline } from './shapes.ts';
import type { DesignView } from './sheet-view.ts';

/** One symbol a layer and design, so that layers can be shown and hidden for the whole sheet. */
export interface LayerSymbol {
  readonly layer: string;
  readonly symbol: SceneSymbol;
}

/** Layer of the blanks' areas; it lies under all rules. */
export const BLANKS_LAYER = 'Blanks';

/** How rules of a role look: told apart by dash and weight, for print in black and white. */
export function ruleLook(role: Role, { unit, thin, cut }: Scale): Look {
  const dashes: Partial<Record<Role, readonly number[]>> = {
    Creasing: [0.7, 0.35],
    ReverseCreasing: [0.7, 0.35, 0.15, 0.35],
    PartialCutting: [1.2, 0.3],
    ReversePartialCutting: [1.2, 0.3, 0.15, 0.3],
    CuttingCreasing: [1.1, 0.3, 0.4, 0.3],
    Perforating: [0.3, 0.25],
    Folding: [0.7, 0.35],
  };
  if (role === 'Cutting') return { stroke: 'ink', width: cut };
  if (role === 'Bleed') return { stroke: 'grey', width: thin, dash: [0, 0.2 * unit], round: true };
  const dash = dashes[role];
  return dash ? { stroke: 'ink', width: thin, dash: dash.map((length) => length * unit) } : { stroke: 'grey', width: thin };
}

export function designSymbols(design: DesignView, index: number, scale: Scale): LayerSymbol[] {
  const symbol = (layer: string, items: SceneSymbol['items']): LayerSymbol => ({ layer, symbol: { id: `design${index + 1}-${layer}`, items } });
  const loops = [design.outline, ...design.openings];
  const symbols = [symbol(BLANKS_LAYER, [drawn(loops, { fill: 'blank' })])];
  if (design.bleedOutline) symbols.push(symbol('Bleed', [drawn([polyline(design.bleedOutline, true)], ruleLook('Bleed', scale))]));
  for (const [role, paths] of byRole(design)) {
    if (role !== 'Cutting' && !(role === 'Bleed' && design.bleedOutline)) symbols.push(symbol(role, [drawn(paths, ruleLook(role, scale))]));
  }
  const cuts = design.rules.filter(({ role }) => role === 'Cutting').map(({ curves }) => curves);
  const look = ruleLook('Cutting', scale);
  symbols.push(symbol('Cutting', [drawn(loops, look), ...(cuts.length > 0 ? [drawn(cuts, look)] : [])]));
  return symbols;
}

function byRole(design: DesignView): Map<Role, CurvePath[]> {
  const roles = new Map<Role, CurvePath[]>();
  for (const { role, curves } of design.rules) roles.set(role, [...(roles.get(role) ?? []), curves]);
  return roles;
}
