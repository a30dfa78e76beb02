import type { MachineRates } from '../press/rates.ts';
import { figure, given, type Figure } from './figure.ts';

/** Hours of one machine for one job: makeready and running. `noun` names the machine in formulas and in what is missing. */
export function machineHours(noun: string, through: number, machine: MachineRates | undefined): Figure {
  const name = (field: string) => (machine ? `${noun} ${field}` : `${noun} rate`);
  return figure(`${noun} hours`, 'h', 'makeready ÷ 60 + through ÷ speed', {
    makeready: given(machine?.makereadyMinutes, name('makeready')),
    through,
    speed: given(machine?.speed, name('speed')),
  });
}

export function machineCost(noun: string, hours: Figure, machine: MachineRates | undefined, currency: string): Figure {
  return figure(noun, currency, 'hours × hourly rate', { hours, 'hourly rate': given(machine?.hourlyRate, `${noun} rate`) });
}

/** Minutes to run so many sheets, makeready left out. */
export function runningMinutes(sheets: number, speed: number): number {
  return (sheets / speed) * 60;
}
