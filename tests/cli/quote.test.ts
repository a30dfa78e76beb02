import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { InputError } from '../../src/base/issue.ts';
import { writeLayoutFile } from '../../src/layout/layout-file.ts';
import { makeQuote } from '../../src/pipeline/quote.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { DEMO_RATES } from '../../src/press/demo-rates.ts';
import { english } from '../../src/render/messages/english.ts';
import { customerReport, quoteReport } from '../../src/render/quote-report.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

/** The real binary, run from another folder. */
const binary = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'quote-'))));
afterAll(() => rmSync(folder, { recursive: true }));

const job = { ups: 12, sheet: '1020x720', grammage: 300, quantities: [5000, 20000, 50000], colours: 4, varnishUnits: 1, stages: ['die-cutting', 'gluing'], boardPricePerTonne: 900, currency: 'EUR' };

function run(content: object, ...options: string[]) {
  writeFileSync(join(folder, 'job.json'), JSON.stringify(content));
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, 'quote', 'job.json', ...options], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

/** The sentences that a person would read. */
function refusal(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    return (error as InputError).issues.map((issue) => english.sentence(issue)).join('\n');
  }
  return 'not refused';
}

describe('quote', () => {
  test('rates missing: exit 1, open figures null and listed', () => {
    const { status, stdout } = run(job, '--json', '-');
    const { quantities, missing } = JSON.parse(stdout);
    expect(status).toBe(1);
    expect(quantities[0]).toMatchObject({ quantity: 5000, sheets: 672, boardKg: 148.06, boardCostPerThousand: 26.65, pressHours: null, costPerThousand: null });
    expect(quantities.map(({ sheets }: { sheets: number }) => sheets)).toEqual([672, 1964, 4545]);
    expect(missing).toContain('press rate');
  });

  test('invented rates are called so; exit 0', () => {
    const { status, stdout, stderr } = run(job, '--rates', 'demo');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('invented demonstration rates');
    expect(stdout.startsWith('5 000 cartons take 672 sheets')).toBe(true);
  });

  test('ups and sheet from a layout, rates and waste from files beside the job', () => {
    writeFileSync(join(folder, 'layout.json'), writeLayoutFile(layoutWith([rectangle('box', 100, 60)], [at('box', 10, 10), at('box', 116, 10)])));
    writeFileSync(join(folder, 'rates.json'), JSON.stringify({ name: 'ours', press: { speed: 9000, makereadyMinutes: 30, hourlyRate: 140 } }));
    const { ups: _, sheet: __, ...rest } = job;
    const { stdout } = run({ ...rest, layout: 'layout.json', rates: 'rates.json' }, '--json', '-');
    const answer = JSON.parse(stdout);
    expect(answer).toMatchObject({ ups: 2, rates: 'ours' });
    expect(answer.quantities[0].pressHours).toBeGreaterThan(0.5);
    expect(answer.missing).not.toContain('press rate');
  });

  test('the customer’s page shows prices and terms but no rate', () => {
    expect(run({ ...job, name: 'FH-1', customer: 'Fernhollow' }, '--rates', 'demo', '--customer', 'customer.html', '--html', 'inside.html').status).toBe(0);
    const [customer, inside] = ['customer.html', 'inside.html'].map((file) => readFileSync(join(folder, file), 'utf8').replace(/<style>.*<\/style>/s, ''));
    expect(customer).toContain('FH-1');
    expect(customer).toContain('per 1000');
    expect(customer).not.toMatch(/hourly|\brates?\b|margin|plate|waste/i);
    expect(inside).toContain('hourly rate');
  });

  test('in German: words and figures of the language; JSON as ever; a tag without words is refused', () => {
    run(job, '--rates', 'demo', '--json', 'en.json');
    const [cost, price] = (({ quantities: [{ costPerThousand, pricePerThousand }] }) => [costPerThousand.toFixed(2), pricePerThousand.toFixed(2)])(JSON.parse(readFileSync(join(folder, 'en.json'), 'utf8')));
    const german = run({ ...job, locale: 'en' }, '--rates', 'demo', '--language', 'de', '--customer', 'kunde.html', '--json', 'de.json');
    expect(german.stdout.startsWith(`5 000 Faltschachteln brauchen 672 Bogen, Preis ${price.replace('.', ',')} EUR je 1000, Kosten ${cost.replace('.', ',')} EUR`)).toBe(true);
    const customer = readFileSync(join(folder, 'kunde.html'), 'utf8').replaceAll('\u00a0', ' ');
    expect(customer).toContain('<html lang="de">');
    expect(customer.replaceAll('\u00a0', ' ')).toContain(`${price.replace('.', ',')} EUR je 1000`);
    expect(readFileSync(join(folder, 'de.json'), 'utf8')).toBe(readFileSync(join(folder, 'en.json'), 'utf8'));
    // Swiss figures beside German words, where the job says so.
    expect(run({ ...job, locale: 'de-CH' }, '--rates', 'demo', '--language', 'de').stdout).toContain(`${cost} EUR je 1000`);
    const refused = run(job, '--language', 'xx');
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain('en, de, fr');
  });

  test('packing: freight by the gross weight, open and listed without its rate; on the customer’s page without a rate', () => {
    const packing = { perCase: 500, casesPerPallet: 30, caseKg: 0.5, palletKg: 25, cartonGrams: 6.5 };
    const rates = { ...DEMO_RATES, freightPerTonne: undefined, packingPerThousand: undefined };
    const open = JSON.parse(run({ ...job, packing, rates }, '--json', '-').stdout);
    expect(open.missing).toEqual(['case price', 'freight rate']);
    expect(open.quantities[2]).toMatchObject({ costPerThousand: null, packing: { cases: 100, pallets: 4, 'net weight': 325, 'gross weight': 475 } });
    expect(run({ ...job, packing }, '--rates', 'demo', '--customer', 'packed.html').status).toBe(0);
    const customer = readFileSync(join(folder, 'packed.html'), 'utf8').replace(/<style>.*<\/style>/s, '').replace(/\u00a0/g, ' ');
    expect(customer).toContain('50 000 cartons: 100 cases of up to 500 on 4 pallets, 475 kg gross.');
    expect(customer).not.toMatch(/freight|hourly|\brates?\b|margin|plate|waste/i);
    const { quantities } = JSON.parse(run({ ...job, packing }, '--rates', 'demo', '--json', '-').stdout);
    // 65 a tonne.
    expect(quantities[2].costs.freight).toBeCloseTo(0.475 * 65, 2);
  });

  test('inks by what they cover: kg and price each, zones of the layout; the food record as given', () => {
    const inks = [{ name: 'black', coverage: 0.25 }, { name: 'P 485 (red)', coverage: [[1, 0]], gramsPerM2: 2, pricePerKg: 30 }];
    writeFileSync(join(folder, 'two.json'), writeLayoutFile(layoutWith([rectangle('box', 100, 60)], [at('box', 10, 10), at('box', 216, 70, 180)])));
    const { ups: _, sheet: __, colours: ___, ...rest } = job;
    const inked = { ...rest, layout: 'two.json', inks, food: { inkFamily: 'low migration', batch: 'B-1' }, quantities: [1000] };
    const { status, stdout } = run(inked, '--rates', 'demo', '--json', '-', '--html', 'inked.html');
    expect(status).toBe(0);
    const { quantities: [quote], inkZones, food } = JSON.parse(stdout);
    // Two blanks of 60 cm² a sheet.
    expect(quote.materials['ink 1']).toBeCloseTo((quote.sheets * 2 * 0.25 * 0.006 * 1.5) / 1000, 3);
    expect(quote.materials['ink 2']).toBeCloseTo((quote.sheets * 2 * 0.5 * 0.006 * 2) / 1000, 3);
    expect(quote.costs.ink).toBeCloseTo(quote.materials['ink 1'] * 19 + quote.materials['ink 2'] * 30, 1);
    expect(inkZones.map(({ ink }: { ink: string }) => ink)).toEqual(['black', 'P 485 (red)']);
    expect(inkZones[1].shares).not.toEqual(inkZones[1].upright);
    expect(food).toEqual({ inkFamily: 'low migration', batch: 'B-1' });
    const page = readFileSync(join(folder, 'inked.html'), 'utf8');
    expect(page).toContain('P 485 (red)');
    expect(page).toContain('Coverage by ink zone');
    expect(run(inked, '--json', '-').stdout).toContain('ink price');
  });

  test('labels are called labels, on every page', () => {
    const facts = makeQuote(readQuoteJob({ ...job, product: 'label', rates: 'demo', stages: [], packing: { perCase: 1000, casesPerPallet: 20, caseKg: 1, palletKg: 20, cartonGrams: 1 }, board: { minimumTonnes: 1 }, existingDie: { ups: 8 } }, 'job.json', () => ({})));
    const inside = JSON.stringify(quoteReport(facts));
    expect(inside).toContain('labels per case');
    expect(inside).not.toMatch(/cartons?\b/);
    expect(JSON.stringify(customerReport(facts))).not.toMatch(/cartons?\b/);
  });

  test('inches, points and pounds in and out', () => {
    const inches = { ...job, sheet: '28x40in', grammage: '80lb cover', boardPricePerTonne: '45/cwt', board: { caliper: '18pt', sheetGrain: 'y', basis: 'cover' }, units: 'inch' };
    const { stdout } = run(inches, '--json', 'inches.json');
    // 28 × 40 in of 80 lb cover (20 × 26): 344.6 lb a thousand, a ream 172.3, over 864 in², so 172 and 344.
    expect(stdout.replace(/\s+/g, ' ')).toContain('In inches and pounds: 28 × 40 (M) in, 18 pt, 80 lb cover, 344 lb a thousand sheets');
    const answer = JSON.parse(readFileSync(join(folder, 'inches.json'), 'utf8'));
    const [first] = answer.quantities;
    expect(first.boardKg).toBeCloseTo((first.sheets * 344.615 * 0.45359237) / 1000, 1);
    expect(first.purchase).toMatchObject({ sizeInches: '28 × 40 (M) in' });
    expect(first.boardCostPerThousand).toBeCloseTo((first.purchase.pounds * 0.45) / 5, 1);
  });

  describe('what the quote lays out by itself', () => {
    const { ups: _, ...rest } = job;
    const label = { style: 'rounded-label', width: 50, height: 80 };

    test('a blank from dimensions: 5 columns of 56 and 2 rows of 86 on 330 × 230, and how much of the board ends as label', () => {
      const { status, stdout, stderr } = run({ ...rest, sheet: '330x230', blank: label, rotations: [0], effort: 'quick', quantities: [10_000] }, '--rates', 'demo', '--json', '-', '--html', 'laid.html');
      expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
      const { ups, quantities } = JSON.parse(stdout);
      expect(ups).toBe(10);
      // A rectangle of 50 × 80 less four corners of radius 5.
      const blankM2 = (4000 - (4 - Math.PI) * 25) / 1e6;
      expect(quantities[0].materials['board yield']).toBeCloseTo((100 * 10_000 * blankM2) / (quantities[0].sheets * 0.33 * 0.23), 1);
      expect(quantities[0].materials['carbon of the waste'] / quantities[0].materials['carbon of the board']).toBeCloseTo(1 - quantities[0].materials['board yield'] / 100, 4);
      expect(readFileSync(join(folder, 'laid.html'), 'utf8')).toContain('<svg');
    });

    test('a drawing beside the job', () => {
      copyFileSync(join(import.meta.dirname, '..', '..', 'samples', 'drawings', 'label-rounded.svg'), join(folder, 'label.svg'));
      const { stdout } = run({ ...rest, sheet: '330x230', drawing: 'label.svg', effort: 'quick' }, '--json', '-');
      expect(JSON.parse(stdout).ups).toBeGreaterThanOrEqual(10);
    });

    test.each([
      ['ups as well', { blank: label, ups: 12 }, '"blank" and "ups"'],
      ['an unknown style', { blank: { style: 'hat', length: 3 } }, 'hat'],
      ['a dimension too few', { blank: { style: 'straight-tuck', length: 60, width: 40 } }, 'depth'],
      ['no sheet', { blank: label, sheet: undefined }, '"sheet"'],
      ['an eighth of a turn', { blank: label, rotations: [45] }, 'quarter turns'],
      ['a quantity of zero', { blank: label, quantities: [0] }, 'quantities.0'],
    ])('%s is refused before anything is laid out', (_name, change, named) => {
      const { status, stderr } = run({ ...rest, ...change });
      expect({ status, stderr }).toMatchObject({ status: 2, stderr: expect.stringContaining(named) });
    });
  });

  describe('other layouts', () => {
    const open = (change: object) => makeQuote(readQuoteJob({ ...job, rates: 'demo', ...change }, 'job.json', () => ({})));

    test('the die that stands wins small lots, until its strokes are used up', () => {
      const fresh = open({ ups: 15, existingDie: { number: 'D-1', ups: 12 } });
      expect(fresh.layouts!.filter(({ turns }) => !turns).map(({ name }) => name)).toEqual(['D-1', undefined]);
      // 5 000 strokes left: about 56 000 cartons on 12 ups.
      const worn = open({ ups: 15, existingDie: { number: 'D-1', ups: 12, strokes: 95_000, mostStrokes: 100_000 }, quantities: [50_000, 100_000] });
      expect(worn.layouts![1]!.fromQuantity).toBeGreaterThan(50_000);
      expect(worn.layouts![1]!.fromQuantity).toBeLessThan(fresh.layouts![1]!.fromQuantity);
      expect(worn.die!.worn).toEqual([100_000]);
    });

    test('a smaller sheet for small lots, as an alternative by name', () => {
      const { layouts } = open({ alternatives: [{ name: 'half sheet', ups: 6, sheet: '720x510' }] });
      expect(layouts!.filter(({ turns }) => !turns).map(({ name }) => name)).toEqual(['half sheet', undefined]);
    });

    test('alone there is nothing to choose; a die off its range asks', () => {
      expect(open({}).layouts).toBeUndefined();
      expect(open({ existingDie: { ups: 12, maxSheet: '740x530' } }).notes.map(({ code }) => code)).toContain('sheet-outside-die');
    });

    test('decimals by locale; trade custom as the shop says', () => {
      const facts = open({ locale: 'de', oversPercent: 5 });
      expect(customerReport(facts).sections.map(({ sentences }) => sentences.join(' ')).join(' ')).toContain('5 % more or less');
      expect(customerReport(facts).sections[0]!.figures[0]!.value).toMatch(/\d,\d\d EUR/);
      expect(refusal(() => open({ locale: 'no such language' }))).toContain('locale');
    });
  });

  test.each([
    ['a quantity of zero', { quantities: [0] }, 'quantities.0'],
    ['a million million', { quantities: [1e12] }, 'quantities.0'],
    ['a negative price', { boardPricePerTonne: -1 }, 'boardPricePerTonne'],
    ['an unknown grade', { grade: 'GX9' }, 'GX9'],
    ['an unknown stage', { stages: ['ironing'] }, 'ironing'],
    ['a sheet beyond the press', { press: { name: 'Press 2', maxSheet: '740x530' } }, 'job.json: sheet: sheet 1020 × 720 mm is larger than Press 2'],
    ['a sheet of no size', { sheet: '0x720' }, 'sheet'],
    ['no grammage', { grammage: undefined }, 'grammage'],
    ['inks and another number of colours', { inks: [{ name: 'black', coverage: 0.1 }] }, '"colours" says 4, but the inks named are 1'],
    ['an ink named twice', { inks: [{ name: 'black', coverage: 0.1 }, { name: 'black', coverage: 0.2 }] }, 'black is named twice'],
    ['more ink than a blank holds', { inks: [{ name: 'black', coverage: 1.2 }] }, 'inks.0.coverage'],
    ['rows of unequal cells', { inks: [{ name: 'black', coverage: [[0.1, 0.2], [0.1]] }] }, 'inks.0.coverage'],
    ['a slip in the food record', { food: { bach: 'B-1' } }, 'food'],
    ['a basic size that is none', { grammage: '80lb velvet' }, 'basic sizes are bond'],
    ['a case larger than its pallet', { packing: { caseSize: '1300x900', palletSize: '1200x800' } }, 'no case of 1300 × 900 mm fits'],
    ['a negative weight of a case', { packing: { caseKg: -1 } }, 'job.json: packing: caseKg: must be at least 0'],
    ['a slip in the packing', { packing: { casesPerPalet: 30 } }, 'casesPerPallet seems to be meant'],
    ['more colours than units', { press: { name: 'Press 2', units: 2 } }, 'Press 2'],
  ])('%s is refused and named', (_, change, named) => {
    expect(refusal(() => readQuoteJob({ ...job, ...change }, 'job.json', () => ({})))).toContain(named);
  });

  test('a quantity given twice is quoted once, and that is said; one carton takes one sheet', () => {
    const { stdout } = run({ ...job, stages: [], colours: 0, varnishUnits: 0, quantities: [1, 1] }, '--json', 'once.json');
    expect(JSON.parse(readFileSync(join(folder, 'once.json'), 'utf8')).quantities.length).toBe(1);
    expect(stdout).toContain('1 carton takes 1 sheet');
    expect(stdout).toContain('the quantity 1 is given twice');
  });

  test.each([
    ['of the job', { quantites: [5000] }, 'job.json: quantites: there is no such field; quantities'],
    ['of the board', { board: { gramage: 300 } }, 'job.json: board: gramage: there is no such field; grammage'],
  ])('a slip of a field %s is refused, another field is noted', (_, slip, sentence) => {
    expect(refusal(() => readQuoteJob({ ...job, ...slip }, 'job.json', () => ({})))).toContain(sentence);
    expect(readQuoteJob({ ...job, remark: 'B2' }, 'job.json', () => ({})).notes.map(({ code }) => code)).toContain('field-left-aside');
  });

  test('bad input: exit 2, a sentence, nothing written', () => {
    const { status, stdout, stderr } = run({ ...job, quantities: [0] }, '--html', 'never.html');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain('quantities.0');
    expect(existsSync(join(folder, 'never.html'))).toBe(false);
  });

  test('an output that names an input is refused', () => {
    expect(run(job, '--json', 'job.json').status).toBe(2);
    expect(JSON.parse(readFileSync(join(folder, 'job.json'), 'utf8'))).toEqual(job);
  });
});
