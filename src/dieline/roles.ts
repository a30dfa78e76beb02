import type { Role, RoleReason } from './dieline.ts';
import type { Drawing, DrawnLine, NameLevel } from './drawing.ts';
import { isKnife } from './knife-roles.ts';
import { lineKinds } from './line-kinds.ts';
import { ruleApplies, speaksOfNames, type RoleRule } from './role-rule.ts';
import { roleOfName, type NamedRole } from './vocabulary.ts';

export interface LineRole {
  readonly role: Role;
  readonly reason: RoleReason;
  /** Whether the line may be part of an outline. */
  readonly inOutline: boolean;
}

/** What is known of a line before its kind is looked at; `whole` when its name is that of the whole line work. */
export type Naming = { readonly known: LineRole } | { readonly known?: undefined; readonly whole: boolean };

/**
 * Resolution order: the user's rules, then names, nearest first; then what the user said of how lines were drawn in
 * earlier drawings (`habits`), for colours mean other things elsewhere. The rest waits for dashes and kinds.
 */
export function nameLines(lines: readonly DrawnLine[], rules: readonly RoleRule[], habits: readonly RoleRule[] = []): { namings: Naming[]; used: ReadonlySet<RoleRule> } {
  const first = [...rules, ...habits.filter(speaksOfNames)];
  const used = new Set<RoleRule>();
  const rolesOfLevel = createLevelLookup();
  const bySource = new Map<DrawnLine['source'], Naming>();
  const nameSource = (source: DrawnLine['source']): Naming => {
    const byRule = (among: readonly RoleRule[]) => {
      const rule = among.find((candidate) => ruleApplies(candidate, source));
      return rule && ({ known: { role: rule.role, reason: 'user rule', inOutline: rule.role !== 'Unknown' } } as const);
    };
    for (const candidate of rules) if (ruleApplies(candidate, source)) used.add(candidate);
    const said = byRule(first);
    if (said) return said;
    const role = nearestRole(source.levels.flatMap(rolesOfLevel));
    if (role && role !== 'whole dieline') return { known: { role, reason: 'name', inOutline: true } };
    return byRule(habits) ?? { whole: role !== undefined };
  };
  const namings = lines.map(({ source }) => {
    const found = bySource.get(source) ?? nameSource(source);
    bySource.set(source, found);
    return found;
  });
  return { namings, used };
}

/** What an element is by its own and its groups' names, the nearest first. */
export function createRoleByName(): (levels: readonly NameLevel[]) => NamedRole | undefined {
  const rolesOfLevel = createLevelLookup();
  return (levels) => nearestRole(levels.flatMap(rolesOfLevel));
}

/** `outline` within a layer `cut` is cut; within a layer `artwork` it is still the outline. */
function nearestRole(named: readonly NamedRole[]): NamedRole | undefined {
  const whole = named.indexOf('whole dieline');
  return named.find((found, i) => found !== 'whole dieline' && (whole < 0 || i < whole || isKnife(found))) ?? (whole < 0 ? undefined : 'whole dieline');
}

/** Roles that one level's names give, each level and name looked up once. */
function createLevelLookup(): (level: NameLevel) => readonly NamedRole[] {
  const byName = new Map<string, readonly NamedRole[]>();
  const byLevel = new Map<NameLevel, readonly NamedRole[]>();
  const rolesOf = (name: string): readonly NamedRole[] => {
    const role = roleOfName(name);
    return role ? [role] : [];
  };
  const remembered = <Key>(map: Map<Key, readonly NamedRole[]>, key: Key, find: (key: Key) => readonly NamedRole[]) => {
    const found = map.get(key) ?? find(key);
    map.set(key, found);
    return found;
  };
  return (level) => remembered(byLevel, level, ({ names }) => names.flatMap((name) => remembered(byName, name, rolesOf)));
}

/** Lines that are no rules by their shape, with what they are instead. */
export type LeftOut = ReadonlyMap<number, 'Dimensions' | 'Legend'>;

/**
 * Roles of all lines. Of those without a name, dashed ones beside solid ones are creases, dotted ones perforations; a
 * single kind of solid line, where nothing is named as cut, is cut. What is left is Unknown: colour alone is no role.
 * Where a name speaks of the whole line work, only lines under it are looked at.
 */
export function settleRoles({ lines }: Pick<Drawing, 'lines'>, namings: readonly Naming[], leftOut: LeftOut): LineRole[] {
  const waiting = lines.flatMap((_, i) => (namings[i].known || leftOut.has(i) ? [] : [i]));
  const underWhole = waiting.filter((i) => isWhole(namings[i]));
  const looked = underWhole.length > 0 ? underWhole : waiting;
  const kinds = lineKinds(lines);
  const cutNamed = namings.some(({ known }) => known?.role === 'Cutting');
  const solid = looked.filter((i) => kinds[i].pattern === 'solid');
  const byDash = cutNamed || solid.length > 0;
  const unclear = byDash ? solid : looked;
  const oneKind = !cutNamed && new Set(unclear.map((i) => kinds[i].key)).size === 1;
  const asked = new Set(looked);

  return lines.map((_, i): LineRole => {
    const { known } = namings[i];
    const instead = leftOut.get(i);
    if (instead) return { role: instead, reason: 'shape', inOutline: false };
    if (known) return known;
    if (!asked.has(i)) return { role: 'Unknown', reason: 'not known', inOutline: false };
    const { pattern } = kinds[i];
    if (byDash && pattern === 'dashed') return { role: 'Creasing', reason: 'dash', inOutline: true };
    if (byDash && pattern === 'dotted') return { role: 'Perforating', reason: 'dash', inOutline: true };
    if (oneKind && (pattern === 'solid' || !byDash)) return { role: 'Cutting', reason: isWhole(namings[i]) ? 'name' : 'only line', inOutline: true };
    return { role: 'Unknown', reason: 'not known', inOutline: true };
  });
}

function isWhole(naming: Naming): boolean {
  return naming.known === undefined && naming.whole;
}
