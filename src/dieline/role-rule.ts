import { inputError } from '../base/issue.ts';
import { normaliseColour } from './colour.ts';
import { OTHER_ROLES, STRUCTURAL_ROLES, type Role } from './dieline.ts';
import { matchesName } from './names.ts';
import type { LineSource } from './drawing.ts';

const SUBJECTS = ['layer', 'class', 'id', 'stroke', 'dash'] as const;

/** What the user says of some lines, e.g. `Cutting=layer:knife`. */
export interface RoleRule {
  readonly role: Role;
  readonly subject: (typeof SUBJECTS)[number];
  /** Name (`*` stands for any characters), colour, or for dashes `any` or `none`. */
  readonly value: string;
  readonly text: string;
}

const ROLES: readonly Role[] = [...STRUCTURAL_ROLES, ...OTHER_ROLES];

/** Throws InputError `role-rule-not-valid`; `where` names the option or the file. */
export function parseRoleRule(text: string, where: string): RoleRule {
  const match = /^\s*(\w+)\s*=\s*(\w+)\s*:\s*(.+?)\s*$/.exec(text);
  const role = ROLES.find((name) => name.toLowerCase() === match?.[1].toLowerCase());
  const subject = SUBJECTS.find((name) => name === match?.[2].toLowerCase());
  if (!match || !role || !subject || (subject === 'dash' && !/^(any|none)$/.test(match[3]))) {
    throw inputError('role-rule-not-valid', { where, facts: { rule: text, roles: ROLES.join(', ') } });
  }
  return { role, subject, value: match[3], text: text.trim() };
}

export function ruleApplies({ subject, value }: RoleRule, source: LineSource): boolean {
  switch (subject) {
    case 'stroke':
      return source.stroke === normaliseColour(value);
    case 'dash':
      return (source.dash.length > 0) === (value === 'any');
    case 'class':
      return source.levels.some(({ classes }) => classes.some((name) => matchesName(name, value)));
    case 'id':
      return source.levels.some(({ id }) => id !== undefined && matchesName(id, value));
    case 'layer':
      return source.levels.some((level) => level.group && level.names.some((name) => matchesName(name, value)));
  }
}
