import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { boardSchema, cutterSchema, pressSchema, readRecord } from '../src/press/records.ts';

const samples = join(import.meta.dirname, '..', 'samples');
const filesIn = (folder: string) => readdirSync(join(samples, folder)).map((name) => [`${folder}/${name}`] as const);
const read = (path: string): unknown => JSON.parse(readFileSync(join(samples, path), 'utf8'));

describe('records of the sample house', () => {
  test.each(filesIn('presses'))('%s', (path) => {
    const press = readRecord(pressSchema, read(path), path);
    expect(press.maxSheet!.width).toBeGreaterThan(press.minSheet!.width);
    expect(press.bar).toBeDefined();
    expect(Object.keys(press).filter((key) => !(key in pressSchema.shape))).toEqual([]);
  });
  test.each(filesIn('cutters'))('%s', (path) => {
    const cutter = readRecord(cutterSchema, read(path), path);
    expect(cutter.gap).toBeGreaterThan(0);
    expect(Object.keys(cutter).filter((key) => !(key in cutterSchema.shape))).toEqual([]);
  });
  test.each(filesIn('boards'))('%s', (path) => {
    const board = readRecord(boardSchema, read(path), path);
    expect(board.grammage).toBeGreaterThan(0);
    expect(Object.keys(board).filter((key) => !(key in boardSchema.shape))).toEqual([]);
  });
});
