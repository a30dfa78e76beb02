import { beforeAll, describe, expect, test } from 'vitest';
import type { MixtureCertificate } from '../../src/nesting/limits/clique-certificate.ts';
import { mixtureCovers } from '../../src/nesting/limits/mixture-cover.ts';
import { prepareLinearPrograms } from '../../src/nesting/linear-program.ts';
import { statedMixture } from '../../src/pipeline/verify-limit.ts';
import { checkMixture } from '../../src/proof/check.ts';
import { problemOf, ringOf, type PointMm } from '../support/problems.ts';

const TEE: PointMm[] = [[40, 0], [80, 0], [80, 80], [120, 80], [120, 120], [0, 120], [0, 80], [40, 80]];
const ELL: PointMm[] = [[0, 0], [90, 0], [90, 30], [30, 30], [30, 60], [0, 60]];
const bar = { kind: 'spoiled', ring: ringOf([[150, 0], [190, 0], [190, 130], [150, 130]]), clearance: 3000 };
const parts = [TEE, ELL].map((outline, d) => ({ id: `${d}`, outline: ringOf(outline), openings: [], turns: [0, 2] as const }));
const problem = problemOf([], [400, 280], 4, [0], { parts, keepOuts: [bar] });
const stated = statedMixture(problem);

type Spoilt = { -readonly [K in keyof MixtureCertificate]: MixtureCertificate[K] extends readonly (infer E)[] ? E[] : MixtureCertificate[K] };

describe('the checker of limits, several designs', () => {
  let certificate: MixtureCertificate;
  const spoil = (change: (copy: Spoilt) => void) => {
    const copy = structuredClone(certificate) as Spoilt;
    change(copy);
    return checkMixture(copy, stated);
  };

  beforeAll(async () => {
    await prepareLinearPrograms();
    certificate = mixtureCovers(problem, [300, 500], [Infinity, Infinity], 1, { grids: [1000], halvings: 0, mostCells: 2000, work: 3e6 }).at(-1)!;
  });

  test('accepts what the search found, and does not look at the claim', () => {
    const accepted = { ok: true, worths: certificate.designs.map(({ worth }) => worth), most: certificate.most };
    expect(Math.min(...accepted.worths)).toBeGreaterThan(0);
    expect(checkMixture(JSON.parse(JSON.stringify(certificate)), stated)).toEqual(accepted);
    expect(spoil((copy) => (copy.most = 1))).toEqual(accepted);
  });

  test('refuses a worth raised and a weight lowered', () => {
    const cover = { ok: false, reason: 'a cell is not covered' };
    for (const d of [0, 1]) expect(spoil((copy) => (copy.designs[d] = { ...copy.designs[d]!, worth: Math.round(copy.designs[d]!.worth * 1.01) }))).toEqual(cover);
    const heaviest = certificate.cliques.reduce((best, clique, k) => (clique.weight > certificate.cliques[best]!.weight ? k : best), 0);
    expect(spoil((copy) => (copy.cliques[heaviest] = { ...copy.cliques[heaviest]!, weight: copy.cliques[heaviest]!.weight - 65_536 }))).toEqual(cover);
  });

  test('refuses a pair of different designs that does not conflict', () => {
    const result = spoil((copy) => {
      const { weight, cells } = copy.cliques.find((clique) => clique.cells[0]! < 2)!;
      const far = cells[1]! > copy.x.count / 2 ? 0 : copy.x.count - 1;
      copy.cliques = [...copy.cliques.filter((clique) => clique.cells !== cells), { weight, cells: [...cells, 2, far, cells[2]!, 1] }];
    });
    expect(result).toEqual({ ok: false, reason: 'two cells of a clique do not conflict' });
  });

  test('refuses cells of one design left out', () => {
    for (const own of [[0, 1], [2, 3]]) {
      const result = spoil((copy) => (copy.cliques = copy.cliques.map(({ weight, cells }) => ({ weight, cells: cells.filter((_, k) => !own.includes(cells[k - (k % 4)]!)) }))));
      expect(result).toEqual({ ok: false, reason: 'a cell is not covered' });
    }
  });

  test('refuses turns and parts of another design, designs exchanged, and other distances', () => {
    expect(spoil((copy) => (copy.designs = copy.designs.toReversed()))).toMatchObject({ ok: false });
    expect(spoil((copy) => (copy.designs[1] = { ...copy.designs[1]!, parts: copy.designs[0]!.parts }))).toEqual({ ok: false, reason: 'a part stands out of the outline' });
    expect(spoil((copy) => (copy.designs = copy.designs.slice(1)))).toMatchObject({ ok: false });
    for (const other of [{ gap: 0 }, { tolerance: 3000 }, { keepOuts: [] }, { usable: { ...problem.usable, maxX: 460_000 } }]) expect(checkMixture(certificate, { ...stated, ...other })).toMatchObject({ ok: false });
  });

  test('refuses what is no certificate of several designs', () => {
    for (const wrong of [null, {}, { ...certificate, kind: 'clique-cover' }, { ...certificate, version: 2 }, { ...certificate, designs: {} }]) expect(checkMixture(wrong, stated)).toMatchObject({ ok: false });
  });
});
