import { describe, expect, test } from 'vitest';
import { createFormat } from '../../src/render/format.ts';

describe('figures for people', () => {
  const english = createFormat('en');
  const german = createFormat('de');
  const inches = createFormat('en', 'in');

  test.each([
    [english.length(6), '6 mm'],
    [english.length(212.5), '212.5 mm'],
    [english.length(1295.125), '1295.13 mm'],
    [english.length(36_000), '36 000 mm'],
    [english.length(-0.001), '0 mm'],
    [english.length(-2), '−2 mm'],
    [german.length(212.5), '212,5 mm'],
    [inches.length(25.4), '1 in'],
    [inches.length(6), '0.236 in'],
    [inches.length(0.004), '0.0002 in'],
    [inches.length(-0.001), '0 in'],
    [english.caliper(0.457), '0.457 mm'],
    [inches.caliper(0.457), '0.018 in'],
    [english.size(1020, 720), '1020 × 720 mm'],
    [inches.size(1016, 711.2), '40 × 28 in'],
    [english.area(734_400), '0.7344 m²'],
    [english.area(32_310), '323.1 cm²'],
    [english.area(314.2), '314 mm²'],
    [inches.area(645.16), '1.00 in²'],
    [inches.area(734_400), '7.905 ft²'],
    [english.percent(0.66), '66.0 %'],
    [german.percent(0.6604), '66,0 %'],
    [english.number(1_234_567.5, 1), '1 234 567.5'],
    [english.number(100, 0), '100'],
    [english.money(26.65, 'EUR'), '26.65 EUR'],
    [english.money(1800, 'JPY'), '1 800 JPY'],
    [english.money(5, 'points'), '5.00 points'],
    [english.duration(4.21), '4.2 s'],
    [english.duration(9.97), '10 s'],
    [english.duration(200), '3 min 20 s'],
    [english.duration(3_900), '1 h 5 min'],
  ])('%s', (written, expected) => {
    expect(written).toBe(expected);
  });
});
