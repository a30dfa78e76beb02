import type { Issue } from '../../base/issue.ts';
import type { LineGroup } from '../../dieline/dieline.ts';
import { useDesk } from '../desk-context.ts';
import { useWords } from '../words/words.ts';
import { useDrawingOptions } from './drawing-actions.ts';
import { ChoiceField } from './fields.tsx';

/** What lines mostly are, by their names in ISO 19593-1; `Legend` is what is no rule. */
const ROLES_OFFERED = ['Cutting', 'Creasing', 'Perforating', 'Gluing', 'Bleed', 'Legend'];
const UNKNOWN_OFFERED = ['Creasing', 'Cutting', 'Perforating', 'Legend'];

/** Says what lines are: it holds for this job, and as a habit for later drawings. `lines` is a rule's right side. */
function useSettle(): (lines: string, role: string, spoken: string) => void {
  const { desk } = useDesk();
  const { say, roleName } = useWords();
  const { file, set } = useDrawingOptions(desk);
  return (lines, role, spoken) => {
    const rule = `${role}=${lines}`;
    const first = (rules: readonly string[]) => [rule, ...rules.filter((kept) => !kept.endsWith(`=${lines}`))];
    if (file) set({ roles: first(file.roles) });
    desk.remembered.value = first(desk.remembered.value);
    desk.notice.value = say('role-remembered', { role: roleName(role), lines: spoken });
  };
}

/** One click says what all lines of a kind are, in this drawing and in later ones. */
export function RoleButtons({ issue }: { readonly issue: Issue }) {
  const { say, roleName } = useWords();
  const settle = useSettle();
  if (issue.code !== 'role-unknown') return null;
  const stroke = String(issue.facts?.['stroke']);
  return (
    <div class="buttons" role="group" aria-label={say('what-are-these')}>
      {UNKNOWN_OFFERED.map((role) => (
        <button key={role} type="button" onClick={() => settle(`stroke:${stroke}`, role, stroke)}>{roleName(role)}</button>
      ))}
    </div>
  );
}

/** Every layer and colour of the drawing with what its lines were taken for, to be corrected. */
export function LinesByKind({ groups }: { readonly groups: readonly LineGroup[] }) {
  const { say, format, roleName } = useWords();
  const settle = useSettle();
  if (groups.length === 0) return null;
  return (
    <details class="line-roles">
      <summary>{say('lines-by-kind', { count: groups.length })}</summary>
      {groups.map((group) => {
        const { subject, value, dash, roles, lengthMm } = group;
        const lines = `${subject}:${value}${dash ? ` & dash:${dash}` : ''}`;
        const name = `${subject === 'layer' ? say('lines-in-layer', { name: value }) : value}${dash ? `, ${say(dash === 'any' ? 'lines-dashed' : 'lines-solid')}` : ''}`;
        const taken = roles.length === 1 ? roles[0] : '';
        const offered = taken === '' || ROLES_OFFERED.includes(taken) ? ROLES_OFFERED : [taken, ...ROLES_OFFERED];
        return (
          <ChoiceField key={lines} label={`${name}: ${format.length(lengthMm)}`} value={taken} onChange={(role) => role !== '' && settle(lines, role, name)}
            options={[...(taken === '' ? [['', roles.map(roleName).join(', ')] as const] : []), ...offered.map((role) => [role, roleName(role)] as const)]} />
        );
      })}
    </details>
  );
}

/** Rules that were remembered, each to be forgotten. */
export function RememberedRoles() {
  const { desk } = useDesk();
  const { say } = useWords();
  const rules = desk.remembered.value;
  if (rules.length === 0) return null;
  return (
    <details class="remembered">
      <summary>{say('remembered-roles', { count: rules.length })}</summary>
      <ul>
        {rules.map((rule) => (
          <li key={rule}>
            <code>{rule}</code>
            <button type="button" onClick={() => (desk.remembered.value = rules.filter((kept) => kept !== rule))}>{say('forget')}</button>
          </li>
        ))}
      </ul>
    </details>
  );
}
