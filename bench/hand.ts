import { carton } from '../tests/desk/hand/frames.ts';
import { workWhileDragging } from '../tests/browser/hand/drag-work.ts';
import { handPages } from '../tests/browser/hand/hand-page.ts';
import { printMachine } from './harness.ts';

/** What a frame costs the page's main thread while a blank is dragged among few and among many; software rendering. */
printMachine();
const pages = await handPages();
if (!pages) process.exit(1);
for (const [columns, rows] of [[4, 3], [10, 10], [25, 20]] as const) {
  const hand = await pages.open({ width: 1400, height: 900 });
  const work = await workWhileDragging(hand, carton(11), columns, rows);
  const { frames: _, ...figures } = work;
  console.log(`${String(columns * rows).padStart(4)} blanks  ${Object.entries(figures).map(([name, value]) => `${name} ${value.toFixed(1)}`).join('  ')}`);
  await hand.close();
}
await pages.close();
