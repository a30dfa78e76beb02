import { signal } from '@preact/signals';
import { describe, expect, test } from 'vitest';
import type { DrawingSource } from '../../src/desk/engine/protocol.ts';
import { newJob, type Job } from '../../src/desk/job/job.ts';
import { putDrawing, takeAsOwnJob } from '../../src/desk/putting-drawings.ts';

const file = (name: string, content: string): DrawingSource => ({ kind: 'file', name, bytes: new TextEncoder().encode(content), options: { roles: [] } });

/** As much of a desk as takes in a drawing; what was changed, in order. */
function deskWith(first: Job) {
  const job = signal(first);
  const changes: Job[] = [];
  const change = (edit: (now: Job) => Job) => void changes.push((job.value = edit(job.value)));
  return { job, changes, change, renewed: signal<Job | undefined>(undefined), begun: signal<{ id: string; before: Job } | undefined>(undefined) };
}

/** Many cartons come as one name, such as dieline.pdf. */
describe('a file of the name of the drawing on the desk', () => {
  const before: Job = { ...newJob('mint'), name: 'mint tea', drawing: file('dieline.svg', 'mint'), handover: { ...newJob().handover, layoutNumber: '7' } };

  test('is a newer state of it, and that is said; the same file again is not', () => {
    const desk = deskWith(before);
    putDrawing(desk, file('dieline.svg', 'mint'));
    expect(desk.renewed.value).toBeUndefined();
    putDrawing(desk, file('dieline.svg', 'sage'));
    expect(desk.job.value).toMatchObject({ id: 'mint', name: 'mint tea', handover: { layoutNumber: '7' } });
    expect(desk.renewed.value?.id).toBe('mint');
  });

  test('is another carton when the person says so: the job before is as it was, its own begins with nothing of the other order', () => {
    const desk = deskWith(before);
    const sage = file('dieline.svg', 'sage');
    putDrawing(desk, sage);
    takeAsOwnJob(desk);
    const [, restored, own] = desk.changes;
    expect(restored).toBe(before);
    expect(own).toMatchObject({ name: 'dieline', drawing: sage, handover: { layoutNumber: '' } });
    expect(own!.id).not.toBe('mint');
    expect([desk.begun.value, desk.renewed.value]).toEqual([{ id: own!.id, before }, undefined]);
  });

  test('of another job nothing is taken apart', () => {
    const desk = deskWith(before);
    putDrawing(desk, file('dieline.svg', 'sage'));
    desk.job.value = newJob('else');
    takeAsOwnJob(desk);
    expect(desk.job.value.id).toBe('else');
    putDrawing(desk, file('tray.svg', 'tray'));
    expect(desk.renewed.value).toBeUndefined();
  });
});
