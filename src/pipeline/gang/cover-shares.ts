import type { Problem } from '../../layout/problem.ts';
import type { DriverSettings } from '../../nesting/driver.ts';
import type { Effort } from '../../nesting/effort.ts';
import type { MixtureCertificate } from '../../nesting/limits/clique-certificate.ts';
import { mixtureCovers, type MixtureDepth } from '../../nesting/limits/mixture-cover.ts';
import { checkMixture } from '../../proof/check.ts';
import { statedMixture } from '../verify-limit.ts';

const DEPTHS: Readonly<Partial<Record<Effort, MixtureDepth>>> = {
  normal: { grids: [12_000], halvings: 0, mostCells: 16_000, work: 4e7 },
  thorough: { grids: [12_000, 20_000], halvings: 0, mostCells: 24_000, work: 4e8 },
};

/** With fewer cells a rotation of each design a cover proves no more than areas do. */
const COARSEST = 500;

/**
 * By cover of the sheet: the part of it that a blank of each design takes at least, pockets that no neighbour can use counted in. In no layout do those of
 * its blanks sum to more than 1. Only covers that the checker comes to as well. `most`: of each design by itself.
 */
export function coverShares(problem: Problem, quantities: readonly number[], most: readonly number[], { effort, seed, stop }: Pick<DriverSettings, 'effort' | 'seed' | 'stop'>): number[][] {
  const depth = DEPTHS[effort];
  const turns = problem.parts.reduce((sum, part) => sum + part.turns.length, 0);
  if (!depth || turns * COARSEST > depth.mostCells) return [];
  return mixtureCovers(problem, quantities, most, seed, depth, () => stop() !== undefined).flatMap((certificate) => sharesOf(problem, certificate));
}

function sharesOf(problem: Problem, certificate: MixtureCertificate): number[][] {
  const checked = checkMixture(certificate, statedMixture(problem));
  return checked.ok && checked.most > 0 ? [checked.worths.map((worth) => worth / checked.most)] : [];
}
