import type { Rates } from './rates.ts';

/** Invented, for trying out; named so in every report. */
export const DEMO_RATES: Rates = {
  name: 'invented demonstration rates',
  press: { speed: 9000, makereadyMinutes: 30, hourlyRate: 140 },
  coater: { speed: 8000, makereadyMinutes: 20, hourlyRate: 90 },
  foilPress: { speed: 4500, makereadyMinutes: 90, hourlyRate: 110 },
  embosser: { speed: 5500, makereadyMinutes: 75, hourlyRate: 95 },
  cutter: { speed: 7000, makereadyMinutes: 60, hourlyRate: 90 },
  stripper: { speed: 7000, makereadyMinutes: 15, hourlyRate: 40 },
  gluer: { speed: 30_000, makereadyMinutes: 45, hourlyRate: 85 },
  packer: { speed: 20_000, makereadyMinutes: 5, hourlyRate: 35 },
  platePrice: 18,
  diePrice: 1200,
  inkPricePerKg: 19,
  inkGramsPerM2: 1.5,
  inkCoverage: 0.3,
  coatingPricePerKg: 7,
  coatingGramsPerM2: 5,
  packingPerThousand: 2.4,
  freightPerTonne: 65,
  marginPercent: 15,
  carbonPerTonne: 1000,
};
