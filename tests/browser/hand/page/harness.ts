import { createFormat } from '../../../../src/render/format.ts';
import { englishHand } from '../../../../src/render/messages/english-hand.ts';
import { judge } from '../../../../src/layout/judge.ts';
import type { LayoutFile } from '../../../../src/layout/layout-file.ts';
import { mountHand, type Hand, type HandState } from '../../../../src/desk/hand/hand.ts';

/** What the test page keeps for the tests to look at. */
interface Harness {
  hand?: Hand;
  changes: HandState[];
  asks: string[];
  mount(layout: LayoutFile, options?: { locked?: number[]; unit?: 'mm' | 'in' }): void;
}

const harness: Harness = {
  changes: [],
  asks: [],
  mount: (layout, { locked = [], unit = 'mm' } = {}) => {
    harness.hand?.destroy();
    harness.changes = [];
    const hand = mountHand(document.getElementById('host')!, {
      layout,
      locked,
      words: englishHand,
      lengths: createFormat('en', unit),
      onChange: (state) => {
        harness.changes.push(state);
        if (state.layout.placements.length > 0) hand.update({ judged: { revision: state.revision, judgement: judge(state.layout) } });
      },
      onAsk: (wish) => harness.asks.push(wish),
    });
    harness.hand = hand;
    hand.update({ judged: { revision: 0, judgement: judge(layout) } });
  },
};

declare global {
  interface Window {
    harness: Harness;
  }
}
window.harness = harness;
