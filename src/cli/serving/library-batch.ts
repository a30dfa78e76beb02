import type { Entry } from '../../shop/library/records.ts';
import { BATCH_PAGE, type BatchReply } from '../../wire/library.ts';

/** A batch as it is kept: what `batch --json` writes, version 1. */
interface KeptBatch {
  readonly name: string;
  readonly complete: boolean;
  readonly currency: string;
  readonly total: BatchReply['total'];
  readonly sheets: BatchReply['sheets'];
  readonly cartons: readonly {
    readonly id: string;
    readonly name: string | null;
    readonly yearly: number | null;
    readonly sheets: readonly NonNullable<BatchReply['cartons'][number]['usual']>[];
    readonly usual: number | null;
    readonly best: number | null;
    readonly savingPerYear: BatchReply['total'] | null;
  }[];
  readonly refused: readonly unknown[];
  readonly doubtful?: readonly unknown[];
}

/** A page of a batch's cartons, those that save most first, those whose saving is not known last. */
export function batchPage({ content }: Entry, page: number): BatchReply {
  const { name, complete, currency, total, sheets, cartons, refused, doubtful = [] } = content as unknown as KeptBatch;
  const worth = ({ savingPerYear }: KeptBatch['cartons'][number]) => savingPerYear?.money ?? savingPerYear?.boardM2 ?? -Infinity;
  const order = [...cartons.keys()].toSorted((a, b) => worth(cartons[b]!) - worth(cartons[a]!) || a - b);
  return {
    name,
    complete,
    currency,
    total,
    sheets,
    cartons: order.slice((page - 1) * BATCH_PAGE, page * BATCH_PAGE).map((index) => {
      const { id, name: called, yearly, sheets: on, usual, best, savingPerYear } = cartons[index]!;
      return { id, name: called, yearly, usual: usual === null ? null : on[usual]!, best: best === null ? null : on[best]!, savingPerYear };
    }),
    cartonCount: cartons.length,
    refused: refused.length,
    doubtful: doubtful.length,
    page,
    pages: Math.max(1, Math.ceil(cartons.length / BATCH_PAGE)),
  };
}
