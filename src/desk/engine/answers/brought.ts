import { broughtBy } from '../../../press/brought.ts';
import type { BroughtAnswer, RawMachines } from '../protocol.ts';
import { machinesOf } from './machines-of.ts';

/** What the chosen machines set. */
export function brought(machines: RawMachines): BroughtAnswer {
  return broughtBy(machinesOf(machines));
}
