import { expect, test } from 'vitest';
import { createFormat } from '../../src/render/format.ts';
import { keepTogether, keptTogether } from '../../src/render/no-break.ts';

test.each([
  ['thousands', '1 831 Bogen, 1 234 567 mal', '1~831 Bogen, 1~234~567 mal'],
  ['sides and their unit', 'on 1020 × 720 mm, 62 × 31 × 118 in', 'on 1020~×~720~mm, 62~×~31~×~118~in'],
  ['units', '6 mm; 0.9 m², 300 g/m², 4.2 s, 66.0 %, 180 °, 12 kg, 3 min 20 s', '6~mm; 0.9~m², 300~g/m², 4.2~s, 66.0~%, 180~°, 12~kg, 3~min 20~s'],
  ['currencies', '26.65 EUR per 1000', '26.65~EUR per 1000'],
  ['words are none', '12 ups 3 to 4, 5 mills, 2 inks, 4 × n, 7 gates, 8 EURO', '12 ups 3 to 4, 5 mills, 2 inks, 4~× n, 7 gates, 8 EURO'],
  ['French signs', 'un ; deux : « trois » !', 'un~; deux~: «~trois~»~!'],
])('kept on one line: %s', (_, text, kept) => {
  expect(keepTogether(text).replaceAll('\u00a0', '~')).toBe(kept);
});

test('a writer of figures never writes a space where a line could end', () => {
  const format = keptTogether(createFormat('de', 'in'));
  const written = [format.number(1_234_567), format.bareLength(1e6), format.length(1e6), format.size(1e6, 720), format.area(1e12), format.percent(12), format.money(1e6, 'EUR'), format.duration(4.2)];
  expect(written.join('').match(/ /g)).toBeNull();
});
