import { describe, expect, test } from 'vitest';
import { createFormat } from '../../src/render/format.ts';
import { historyChart } from '../../src/render/history-chart.ts';
import { englishReport } from '../../src/render/messages/english-report.ts';
import { nestReport } from '../../src/render/nest-report.ts';
import { reportHtml } from '../../src/render/report-html.ts';
import { textWidth } from '../../src/render/text-width.ts';
import { facts } from './facts.ts';

const format = createFormat('en');
const chart = historyChart(facts, englishReport, format)!;
const withPlainSpaces = (text: string) => text.replaceAll('\u00a0', ' ');
const html = reportHtml(nestReport(facts), [{ section: 'history', svg: chart, onPaper: false }]);

describe('the report as a page', () => {
  test('loads nothing and runs nothing', () => {
    expect(html).not.toMatch(/<script|<link|<img|<iframe|@import|url\(|\son\w+=|https?:\/\/(?!www\.w3\.org\/2000\/svg)/i);
    expect(html).toContain("default-src 'none'");
  });

  test('holds the answer as its heading and every figure of the report', () => {
    expect(withPlainSpaces(html)).toContain('<h1>15 ups on 1020 × 720 mm; at most 17 can fit (pockets); 66.0 % of the sheet is carton.</h1>');
    for (const { figures } of nestReport(facts).sections) for (const { value } of figures) expect(withPlainSpaces(html)).toContain(value);
  });

  test('a figure is never parted from its unit', () => {
    expect(html).toContain('66.0\u00a0%');
    expect(html).toContain('7\u00a0344.0\u00a0cm²');
    expect(html).toContain('1020\u00a0×\u00a0720\u00a0mm');
  });

  test('names cannot break the markup', () => {
    const hostile = reportHtml(nestReport({ ...facts, design: { ...facts.design, name: '</title><script>alert(1)</script>' }, source: '<img src=x onerror=alert(1)>' }));
    expect(hostile).not.toMatch(/<script|<img/);
    expect(hostile).toContain('&lt;script&gt;');
  });

  test('opening and closing tags pair up', () => {
    const open: string[] = [];
    for (const [tag, close, name] of html.matchAll(/<(\/?)([a-z]\w*)[^>]*>/gi)) {
      if (name === 'meta' || tag.endsWith('/>')) continue;
      if (close) expect(open.pop()).toBe(name);
      else open.push(name!);
    }
    expect(open).toEqual([]);
  });
});

describe('the chart of improvements', () => {
  test('rises from left to right, one step an improvement', () => {
    const stair = /class="chart-stair" d="([^"]+)"/.exec(chart)![1]!;
    const points = [...stair.matchAll(/[MH]([\d.]+)(?: |V)([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
    expect(points).toHaveLength(3);
    for (let i = 1; i < points.length; i++) {
      expect(points[i]![0]).toBeGreaterThan(points[i - 1]![0]!);
      expect(points[i]![1]).toBeLessThan(points[i - 1]![1]!);
    }
  });

  test('shows the limit, and counted work where no time was taken', () => {
    expect(chart).toContain('limit 17');
    expect(chart).toContain('seconds');
    const untimed = historyChart({ history: [{ work: 5, ups: 3, source: 'plain rows' }] }, englishReport, format)!;
    expect(untimed).toContain('steps of work');
    expect(untimed).not.toContain('limit');
  });

  test('the limit comes down where its earlier values are known', () => {
    const falling = historyChart({ ...facts, limits: [{ work: 500, seconds: 0.05, ups: 20 }, { work: 50_000, seconds: 2, ups: 17 }] }, englishReport, format)!;
    const [, first, second] = /class="chart-limit" d="M[\d.]+ ([\d.]+)H[\d.]+V([\d.]+)H/.exec(falling)!.map(Number);
    expect(second).toBeGreaterThan(first!);
  });

  test('labels of the time axis keep apart over many decades', () => {
    const wide = historyChart({ history: [{ work: 1, ups: 3, source: 'plain rows' }, { work: 4e11, ups: 9, source: 'nested rows' }] }, englishReport, format)!;
    const ticks = [...wide.matchAll(/<text x="([\d.]+)" y="199.2" text-anchor="(middle|end)"[^>]*>([^<]+)</g)].map(([, at, anchor, text]) => {
      const width = textWidth(text!, 11);
      const end = anchor === 'end' ? Number(at) : Number(at) + width / 2;
      return { start: end - width, end };
    });
    expect(ticks.length).toBeGreaterThan(2);
    for (let i = 1; i < ticks.length; i++) expect(ticks[i]!.start).toBeGreaterThan(ticks[i - 1]!.end);
  });

  test('there is none without improvements', () => {
    expect(historyChart({ history: [] }, englishReport, format)).toBeUndefined();
  });
});

test('French signs stay with their word on the page and in a terminal', () => {
  const page = reportHtml({ language: 'fr', title: 'A', answer: 'un ; deux : « trois » !', sections: [], caution: { heading: 'C', text: 'c' } });
  expect(page).toContain('un\u00a0; deux\u00a0: «\u00a0trois\u00a0»\u00a0!');
});
