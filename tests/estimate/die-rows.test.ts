import { expect, test } from 'vitest';
import { dieRows } from '../../src/estimate/die-rows.ts';
import { createFormat } from '../../src/render/format.ts';
import { englishHandover } from '../../src/render/messages/english-handover.ts';

const box = (minX: number, minY: number) => ({ minX, minY, maxX: minX + 160, maxY: minY + 60 });
const row = (count: number, y: number, from = 6, step = 164.6) => Array.from({ length: count }, (_, i) => box(from + i * step, y));
const told = (boxes: ReturnType<typeof box>[]) => englishHandover.rows(dieRows(boxes), createFormat('en'));

test.each([
  ['straight rows', [...row(6, 13), ...row(6, 77)], '2 rows of 6, step 164.6 mm; 64 mm from row to row; none shifted.'],
  ['every second row shifted', [...row(6, 13), ...row(6, 77, 88.3), ...row(6, 141)], '3 rows of 6, step 164.6 mm; 64 mm from row to row; every second row shifted 82.3 mm to the right.'],
  ['rows of 3 and 2 by turns', [...row(3, 13, 88.3), ...row(2, 77, 6), ...row(3, 141, 88.3)], '3 rows, of 3, 2, 3, step 164.6 mm; 64 mm from row to row; every second row shifted 82.3 mm to the left.'],
  ['a staircase', [...row(2, 13), ...row(2, 77, 16), ...row(2, 141, 26)], '3 rows of 2, step 164.6 mm; 64 mm from row to row; each row shifted 10 mm to the right against the one before.'],
  ['head to tail', [...row(3, 13), ...row(3, 33, 88.3), ...row(3, 141), ...row(3, 161, 88.3)], '4 rows of 3, step 164.6 mm; 20 and 108 mm by turns from row to row; every second row shifted 82.3 mm to the right.'],
  ['one column', [box(6, 13), box(6, 77), box(6, 141)], 'One column of 3, step 64 mm.'],
  ['two columns, one set off', [box(6, 13), box(6, 77), box(6, 141), box(180, 40), box(180, 104), box(180, 168)], '2 columns of 3, step 64 mm; 174 mm from column to column; every second column shifted 27 mm to the tail.'],
  ['one blank', [box(6, 13)], 'One row of 1.'],
  ['nothing in line', [box(6, 13), box(200, 40), box(400, 77)], 'No two blanks stand in line; placements.csv holds every place.'],
  ['steps that differ', [box(6, 13), box(170, 13), box(340, 13), box(6, 80), box(170, 80), box(340, 80)], '2 rows of 3, steps differ within the rows; 67 mm from row to row; none shifted.'],
])('%s', (_, boxes, words) => expect(told(boxes)).toBe(words));
