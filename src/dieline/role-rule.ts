import { inputError } from '../base/issue.ts';
import { normaliseColour } from './colour.ts';
import { OTHER_ROLES, STRUCTURAL_ROLES, type Role } from './dieline.ts';
import { matchesName } from './names.ts';
import type { LineSource } from './drawing.ts';

type DashChoice = 'any' | 'none';

const SUBJECTS = ['layer', 'class', 'id', 'stroke', 'dash'] as const;

/** What the user says of some lines, e.g. `Cutting=layer:knife`, or of the solid ones among them, `Cutting=layer:knife & dash:none`. */
export interface RoleRule {
  readonly role: Role;
  readonly subject: (typeof SUBJECTS)[number];
  /** Name (`*` stands for any characters), colour, or for dashes `any` or `none`. */
  readonly value: string;
  /** Only the dashed lines among them, or only the solid ones. */
  readonly dash?: DashChoice;
  readonly text: string;
}

const ROLES: readonly Role[] = [...STRUCTURAL_ROLES, ...OTHER_ROLES];

/** Throws InputError `role-rule-not-valid`; `where` names the option or the file. */
export function parseRoleRule(text: string, where: string): RoleRule {
  const rule = roleRuleOf(text);
  if (!rule) throw inputError('role-rule-not-valid', { where, facts: { rule: text, roles: ROLES.join(', ') } });
  return rule;
}

/** Undefined where the text is no rule. */
export function roleRuleOf(text: string): RoleRule | undefined {
  const match = /^\s*(\w+)\s*=\s*(\w+)\s*:\s*(.+?)\s*(?:&\s*dash:(any|none)\s*)?$/.exec(text);
  const role = ROLES.find((name) => name.toLowerCase() === match?.[1].toLowerCase());
  const subject = SUBJECTS.find((name) => name === match?.[2].toLowerCase());
  if (!match || !role || !subject || (subject === 'dash' && !/^(any|none)$/.test(match[3]))) return undefined;
  const dash = match[4] as DashChoice | undefined;
  return { role, subject, value: match[3], ...(dash && { dash }), text: text.trim() };
}

export function ruleApplies({ subject, value, dash }: Omit<RoleRule, 'role' | 'text'>, source: LineSource): boolean {
  return (dash === undefined || isDashed(source, dash)) && isSubject(subject, value, source);
}

/** Whether a rule speaks of lines by what they are called, and not by how they are drawn. */
export function speaksOfNames({ subject }: RoleRule): boolean {
  return subject !== 'stroke' && subject !== 'dash';
}

function isDashed({ dash }: LineSource, choice: string): boolean {
  return (dash.length > 0) === (choice === 'any');
}

function isSubject(subject: RoleRule['subject'], value: string, source: LineSource): boolean {
  switch (subject) {
    case 'stroke':
      return source.stroke === normaliseColour(value);
    case 'dash':
      return isDashed(source, value);
    case 'class':
      return source.levels.some(({ classes }) => classes.some((name) => matchesName(name, value)));
    case 'id':
      return source.levels.some(({ id }) => id !== undefined && matchesName(id, value));
    case 'layer':
      return source.levels.some((level) => level.group && level.names.some((name) => matchesName(name, value)));
  }
}
