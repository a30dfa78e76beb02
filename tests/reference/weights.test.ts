// @ts-expect-error the library comes without types
import convert from 'convert-units';
import { describe, expect, test } from 'vitest';
import { boardWeight, sheetsPerTonne } from '../../src/estimate/board.ts';
import { BASIC_SIZES, basisWeightOf, caliperOf, caliperOfPoints, equivalentWeight, grammageOf, grammageOfMsf, listedMWeight, msfOf, mWeight, mWeightOfMsf, parseGrammage, parseTonnePrice, pointsOf, poundsOf, pricePerMOf, roundReamWeight } from '../../src/press/basis-weights.ts';
import { parseCaliperMm, parseLengthMm } from '../../src/base/units.ts';

const kg = (sheets: number, widthMm: number, heightMm: number, grammage: number) => boardWeight(sheets, { widthMm, heightMm, grammage }).value!;

describe('weights with published answers', () => {
  test('500 × 700 mm of 80 g, 200 sheets (toufexis.info)', () => expect(kg(200, 500, 700, 80)).toBeCloseTo(5.6, 9));
  test('61 × 86 cm of 80 g (laser-line.de)', () => expect(kg(1, 610, 860, 80) * 1000).toBeCloseTo(41.97, 2));
  test('86 × 122 cm of 90 g, volume 1.5, a stack of 1400 mm (bvdm maths sheet DWV12-5)', () => {
    expect(caliperOf(90, 1.5)).toBeCloseTo(0.135, 9);
    const sheets = Math.floor(1400 / caliperOf(90, 1.5));
    expect(sheets).toBe(10_370);
    expect(kg(sheets, 860, 1220, 90)).toBeCloseTo(979.218, 3);
  });
  test('11 × 17 of 70 lb book: 27.56 a thousand, ream 13.78 (casepaper)', () => {
    expect(mWeight(70, BASIC_SIZES.book, 11, 17)).toBeCloseTo(27.558, 3);
    expect(roundReamWeight(mWeight(70, BASIC_SIZES.book, 11, 17) / 2, 11, 17)).toBe(13.78);
  });
  test('basis weights and grammages (sylvamo, casepaper)', () => {
    expect(grammageOf(28, BASIC_SIZES.bond)).toBeCloseTo(105.3, 1);
    expect(grammageOf(45, BASIC_SIZES.book)).toBeCloseTo(66.6, 1);
    expect(basisWeightOf(67.3, BASIC_SIZES.book)).toBeCloseTo(45.46, 1);
  });
  // The published factors have three decimals.
  test('factors from pounds to grammes (printwiki)', () => {
    expect(grammageOf(1, BASIC_SIZES.bond)).toBeCloseTo(3.76, 3);
    expect(grammageOf(1, BASIC_SIZES.cover)).toBeCloseTo(2.704, 3);
    expect(grammageOf(1, BASIC_SIZES.tag)).toBeCloseTo(1.627, 3);
    expect(grammageOf(1, BASIC_SIZES.book)).toBeCloseTo(1.48, 3);
    expect(grammageOf(20, BASIC_SIZES.bond)).toBeCloseTo(75.2, 1);
    expect(basisWeightOf(103.6, BASIC_SIZES.book)).toBeCloseTo(69.93, 0);
  });
  // Computed from the exact pound and inch.
  test('factors that follow from the exact constants', () => {
    expect(grammageOf(1, { width: 1, height: 1 })).toBeCloseTo(1406.139, 3);
    expect(grammageOf(1, BASIC_SIZES.index)).toBeCloseTo(1.8079, 3);
    expect(grammageOf(1, BASIC_SIZES.bristol)).toBeCloseTo(2.1929, 3);
    expect(grammageOfMsf(1)).toBeCloseTo(4.8824, 4);
    expect(grammageOfMsf(1 / 3)).toBeCloseTo(1.6275, 4);
  });
  test('36 × 48 of 50 lb and chipboard by the thousand square feet (paperconverter)', () => {
    expect(mWeight(50, BASIC_SIZES.tag, 36, 48)).toBeCloseTo(200, 9);
    expect(mWeightOfMsf(85, 30, 48)).toBeCloseTo(850, 9);
  });
  test('30 lb double foolscap in large post (Dawe, Paper and Its Uses, 1914; the result computed)', () => expect(equivalentWeight(30, 459, 346)).toBeCloseTo(22.6, 1));
  // Computed.
  test.each([
    [720, 1020, 300, 220.32, 4538.85],
    [700, 1000, 250, 175, 5714.29],
    [640, 900, 300, 172.8, 5787.04],
    [1000, 1400, 250, 350, 2857.14],
  ])('%i × %i of %i g: kg a thousand, sheets a tonne', (width, height, grammage, perThousand, perTonne) => {
    expect(kg(1000, width, height, grammage)).toBeCloseTo(perThousand, 6);
    expect(sheetsPerTonne({ widthMm: width, heightMm: height, grammage }).value).toBeCloseTo(perTonne, 2);
  });
  test('a caliper of .0095 in is 211 pages an inch (casepaper)', () => expect(Math.round(25.4 / (caliperOfPoints(9.5) / 2))).toBe(211));
});

describe('ream weights are rounded as the trade does (casepaper, sylvamo)', () => {
  test.each([
    [30, 30, 101.4, 101],
    [24, 36, 50.3, 50.5],
    [16, 21, 33.3, 33.5],
    [8.5, 11, 12.346, 12.35],
  ])('%f × %f in', (width, height, pounds, listed) => expect(roundReamWeight(pounds, width, height)).toBe(listed));

  // From memory: price a thousand = M-weight × price a hundredweight ÷ 100.
  test('price a thousand from a hundredweight', () => expect(pricePerMOf(200, 75)).toBe(150));
});

// The library's foot is 0.3048 m less its seventh digit, so a ten-millionth is all that can be asked of it.
const RELATIVE = 1e-7;

describe('measures as people write them', () => {
  test.each([['300', 300], ['300 g/m²', 300], ['70 lb text', 103.6], ['28lb bond', 105.3], ['90#index', 162.7], ['85 lb/1000ft2', 415]])('%s is %f g/m²', (text, grams) => expect(parseGrammage(text)).toBeCloseTo(grams, 0));
  test.each(['', 'heavy', '80lb', '80lb velvet', '-3', 'NaN', '1e9999lb book'])('%s is no grammage', (text) => expect(parseGrammage(text)).toBeUndefined());
  test('points of caliper are thousandths of an inch, of type they are not', () => {
    expect(parseCaliperMm('18pt')).toBeCloseTo(0.4572, 9);
    expect(parseCaliperMm('450 µm')).toBeCloseTo(0.45, 9);
    expect(parseCaliperMm('0.018in')).toBeCloseTo(0.4572, 9);
    expect(parseCaliperMm('thick')).toBeUndefined();
  });
  test('there and back', () => {
    expect(pointsOf(caliperOfPoints(18))).toBeCloseTo(18, 9);
    expect(msfOf(grammageOfMsf(85))).toBeCloseTo(85, 9);
    expect(poundsOf(0.45359237)).toBeCloseTo(1, 9);
  });
  // 11 × 17 in of 70 lb book: ream 13.78, so 27.56 (casepaper); 25 × 38 in is over 864 in²: whole pounds a ream.
  test('a thousand sheets as listed', () => {
    expect(listedMWeight(grammageOf(70, BASIC_SIZES.book), 11, 17)).toBeCloseTo(27.56, 9);
    expect(listedMWeight(grammageOf(70.3, BASIC_SIZES.book), 25, 38)).toBe(140);
  });
});

describe('conversions agree with a library of units', () => {
  test.each([[1], [45], [2204.6]])('%f lb', (pounds) => expect(poundsOf(convert(pounds).from('lb').to('kg')) / pounds - 1).toBeLessThan(RELATIVE));
  test.each([[10], [18], [28]])('%i points', (points) => expect(parseCaliperMm(`${points}pt`)! / convert(points / 1000).from('in').to('mm') - 1).toBeLessThan(RELATIVE));
  test('a price of 100 lb', () => expect(parseTonnePrice('45/cwt')! / ((45 / 100) * convert(1).from('mt').to('lb')) - 1).toBeLessThan(RELATIVE));
  test.each([[1], [28], [40.5]])('%f in', (inches) => expect(parseLengthMm(`${inches}in`)! / convert(inches).from('in').to('mm') - 1).toBeLessThan(RELATIVE));
  test('a pound on a square foot', () => {
    const grams = convert(1).from('lb').to('g');
    const area = convert(1).from('ft2').to('m2');
    expect(grammageOfMsf(1000)).toBeCloseTo(grams / area, 1);
  });
});
