import { beforeAll, describe, expect, test } from 'vitest';
import type { CliqueCertificate } from '../../src/nesting/limits/clique-certificate.ts';
import type { PiecesCertificate } from '../../src/nesting/limits/clique-limit.ts';
import { cliqueLimit } from '../../src/nesting/limits/clique-limit.ts';
import type { StatedProblem } from '../../src/proof/checked-problem.ts';
import { checkLimit } from '../../src/proof/check.ts';
import { problemOf, ringOf, type PointMm } from '../support/problems.ts';
import { statedProblem } from '../support/stated.ts';

const TEE: PointMm[] = [[40, 0], [80, 0], [80, 80], [120, 80], [120, 120], [0, 120], [0, 80], [40, 80]];
const bar = { kind: 'spoiled', ring: ringOf([[150, 0], [190, 0], [190, 130], [150, 130]]), clearance: 3000 };
const problem = problemOf(TEE, [400, 280], 4, [0, 2], { keepOuts: [bar] });

type Spoilt = { -readonly [K in keyof CliqueCertificate]: CliqueCertificate[K] extends readonly (infer E)[] ? E[] : CliqueCertificate[K] };

describe('the checker of limits', () => {
  let certificate: CliqueCertificate;
  const stated = statedProblem(problem);
  const spoil = (change: (copy: Spoilt) => void, against: StatedProblem = stated) => {
    const copy = structuredClone(certificate) as Spoilt;
    change(copy);
    return checkLimit(copy, against);
  };

  beforeAll(async () => {
    for await (const { limit } of cliqueLimit(problem, { best: 8, seed: 1, depth: { grids: [{ cells: 300 }], halvings: 0, mostCells: 2000 } })) if (limit) certificate = limit.certificate as CliqueCertificate;
  });

  test('accepts what the search found, after a way through JSON', () => {
    expect(checkLimit(JSON.parse(JSON.stringify(certificate)), stated)).toEqual({ ok: true, ups: certificate.ups });
    expect(certificate.ups).toBeLessThanOrEqual(8);
  });

  test('does not look at the claim', () => {
    expect(spoil((copy) => (copy.ups = 1))).toEqual({ ok: true, ups: certificate.ups });
  });

  test('refuses a lowered weight', () => {
    const heaviest = certificate.cliques.reduce((best, clique, k) => (clique.weight > certificate.cliques[best]!.weight ? k : best), 0);
    const result = spoil((copy) => (copy.cliques[heaviest] = { ...copy.cliques[heaviest]!, weight: copy.cliques[heaviest]!.weight - 4096 }));
    expect(result).toEqual({ ok: false, reason: 'a cell is not covered' });
  });

  test('refuses two cells that do not conflict', () => {
    const result = spoil((copy) => {
      const { weight, cells } = copy.cliques[0]!;
      const far = cells[1]! > copy.x.count / 2 ? 0 : copy.x.count - 1;
      copy.cliques[0] = { weight, cells: [...cells, 0, far, cells[2]!, 1] };
    });
    expect(result).toEqual({ ok: false, reason: 'two cells of a clique do not conflict' });
  });

  test('refuses a cell named twice', () => {
    const result = spoil((copy) => (copy.cliques[0] = { ...copy.cliques[0]!, cells: [...copy.cliques[0]!.cells, ...copy.cliques[0]!.cells] }));
    expect(result).toEqual({ ok: false, reason: 'a clique names a cell twice' });
  });

  test('refuses a cell left out', () => {
    const result = spoil((copy) => (copy.cliques = copy.cliques.map(({ weight, cells }) => ({ weight, cells: cells.slice(4) }))));
    expect(result).toEqual({ ok: false, reason: 'a cell is not covered' });
  });

  test('refuses parts that stand out of the outline or are not convex', () => {
    const wider = certificate.parts.map((part) => part.map((coordinate) => coordinate * 1.5));
    expect(spoil((copy) => (copy.parts = wider))).toMatchObject({ ok: false });
    expect(spoil((copy) => (copy.parts = [[...copy.parts[0]!].reverse()]))).toMatchObject({ ok: false });
    const notch = TEE.flatMap(([x, y]) => [2 * x * 1000 - 120_000, 2 * y * 1000 - 120_000]);
    expect(spoil((copy) => (copy.parts = [notch]))).toEqual({ ok: false, reason: 'a part is not convex' });
  });

  test('refuses cells too large for one blank, and lines changed behind the cliques', () => {
    expect(spoil((copy) => (copy.x = { span: copy.x.span, count: 2 }))).toMatchObject({ ok: false });
    expect(spoil((copy) => (copy.x = { span: 2 * copy.x.span, count: copy.x.count }))).toMatchObject({ ok: false });
  });

  test('refuses a certificate of another problem: smaller gap, larger sheet, other rotations, no keep-out, larger tolerance', () => {
    const others: Partial<StatedProblem>[] = [{ gap: 0 }, { usable: { ...problem.usable, maxX: 460_000 } }, { turns: [0, 1, 2, 3] }, { keepOuts: [] }, { tolerance: 3000 }];
    for (const other of others) expect(checkLimit(certificate, { ...stated, ...other })).toMatchObject({ ok: false });
    expect(checkLimit(certificate, { ...stated, keepOuts: [{ ...bar, ring: ringOf([[150, 0], [190, 0], [190, 90], [150, 90]]) }] })).toMatchObject({ ok: false });
  });

  test('refuses what is no certificate', () => {
    const wrong = [null, 7, [], {}, { ...certificate, version: 2 }, { ...certificate, x: { span: 1.5, count: 3 } }, { ...certificate, cliques: [{ weight: -1, cells: [] }] }, { ...certificate, symmetry: 3 }];
    for (const value of wrong) expect(checkLimit(value, stated)).toMatchObject({ ok: false, reason: expect.stringContaining('not a certificate') });
  });

  test('refuses an outline that crosses itself', () => {
    const bow = [0, 2, 1, 3].map((k) => ringOf([[0, 0], [120, 0], [120, 120], [0, 120]])[k]!);
    expect(checkLimit(certificate, { ...stated, outline: bow })).toMatchObject({ ok: false });
  });
});

describe('a sheet that a bar cuts into two', () => {
  const across = { kind: 'colour-bar', ring: ringOf([[-10, 140], [410, 140], [410, 146], [-10, 146]]), clearance: 3000 };
  const barred = problemOf(TEE, [400, 400], 4, [0, 2], { keepOuts: [across] });
  const stated = statedProblem(barred);
  let certificate: PiecesCertificate;

  beforeAll(async () => {
    for await (const { limit } of cliqueLimit(barred, { best: 9, seed: 1, depth: { grids: [{ cells: 150 }], halvings: 0, mostCells: 2000 } })) if (limit) certificate = limit.certificate as PiecesCertificate;
  });

  test('is the sum of its pieces', () => {
    const [below, above] = certificate.pieces;
    expect(checkLimit(JSON.parse(JSON.stringify(certificate)), stated)).toEqual({ ok: true, ups: below!.ups + above!.ups });
  });

  test('wants every piece, in its order, and leaves out only those without room', () => {
    const [below, above] = certificate.pieces;
    for (const pieces of [[above, below], [below], [below, above, above], [null, above], [below, 7]]) expect(checkLimit({ ...certificate, pieces }, stated)).toMatchObject({ ok: false });
    const low = { ...stated, usable: { ...stated.usable, minY: 100_000 } };
    expect(checkLimit({ ...certificate, pieces: [null, above] }, low)).toEqual({ ok: true, ups: above!.ups });
  });

  test('is none where the bar ends on the sheet, is no rectangle, or leaves no place', () => {
    const others = [[[0, 140], [400, 140], [400, 146], [0, 146]], [[-10, 140], [410, 140], [410, 146], [-10, 150]], [[-10, 500], [410, 500], [410, 506], [-10, 506]]] as PointMm[][];
    for (const ring of others) expect(checkLimit(certificate, { ...stated, keepOuts: [{ ...across, ring: ringOf(ring) }] })).toEqual({ ok: false, reason: 'the pieces are not those of the sheet' });
  });
});
