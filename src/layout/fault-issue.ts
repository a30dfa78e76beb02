import type { Issue } from '../base/issue.ts';
import type { Fault } from './judge.ts';

/** A fault as an issue, for people: stations count from 1. */
export function faultIssue({ kind, blanks, place, byMm }: Fault): Issue {
  return { code: `fault-${kind}`, severity: 'error', place, facts: { stations: stationList(blanks), by: byMm } };
}

/** Names a few; a design's fault may concern them all. */
const MOST_NAMED = 6;

function stationList(blanks: readonly number[]): string {
  const named = blanks.slice(0, MOST_NAMED).map((number) => number + 1);
  const more = blanks.length - named.length;
  if (more > 0) return `${named.join(', ')} and ${more} more`;
  return named.length === 1 ? String(named[0]) : `${named.slice(0, -1).join(', ')} and ${named.at(-1)}`;
}
