import { expect, test } from 'vitest';
import { checkFields, readNoted } from '../../src/press/known-fields.ts';
import { plainReason } from '../../src/press/plain-reason.ts';
import { pressSchema } from '../../src/press/records.ts';
import { z } from 'zod';

const known = Object.keys(pressSchema.shape);

test('a slip of a field is refused and names the field meant', () => {
  expect(() => checkFields(known, { griper: 20 }, 'p.json')).toThrowError(expect.objectContaining({ issues: [expect.objectContaining({ code: 'field-misspelt', where: 'p.json: griper', facts: { meant: 'gripper' } })] }));
});

test('a record of another kind is refused, a field of the shop’s own is noted', () => {
  expect(() => checkFields(known, { name: 'a', grammage: 80 }, 'b.json')).toThrowError(expect.objectContaining({ issues: [expect.objectContaining({ code: 'record-of-other-kind' })] }));
  expect(checkFields(known, { name: 'a', 'ink-gripper': 8, rack: 7 }, 'p.json')).toMatchObject([{ code: 'field-left-aside', facts: { field: 'rack' } }]);
});

test.each([
  [z.number(), 'a', 'a number is wanted, not text'],
  [z.number(), undefined, 'is missing; a number is wanted'],
  [z.array(z.number()).min(1), [], 'at least 1 entry is wanted'],
  [z.strictObject({ a: z.number() }), { a: 1, b: 2 }, '"b" is not known here; look for a misspelling, or leave it out'],
  [z.enum(['x', 'y']), 'z', 'one of "x", "y" is wanted'],
  [z.number().positive(), 0, 'must be above 0'],
])('reasons in plain words: %#', (schema, value, reason) => {
  expect(schema.safeParse(value).error!.issues.map(plainReason)).toEqual([reason]);
});

test('fields of objects within a record are looked at too; strict ones refuse by themselves', () => {
  const job = z.looseObject({ stations: z.int(), versions: z.array(z.looseObject({ id: z.string(), quantity: z.int() })), costs: z.strictObject({ form: z.number() }).optional() });
  const read = (json: object) => readNoted(job, json, 'job.json');
  const good = { stations: 9, versions: [{ id: 'mint', quantity: 250, colour: 'green' }] };
  expect(read(good).notes).toMatchObject([{ code: 'field-left-aside', where: 'job.json: versions.0', facts: { field: 'colour' } }]);
  expect(() => read({ ...good, versions: [{ id: 'mint', quantitty: 250 }] })).toThrowError(expect.objectContaining({ issues: [expect.objectContaining({ code: 'field-misspelt', where: 'job.json: versions.0: quantitty' })] }));
  expect(() => read({ ...good, costs: { fom: 3 } })).toThrowError(expect.objectContaining({ issues: expect.arrayContaining([expect.objectContaining({ code: 'field-not-valid' })]) }));
});
