import type { Desk, Panel } from './desk.ts';

/** From the moment something is asked for: how to show it when it is there. Who went to another panel meanwhile stays there. */
export function goingFrom({ panel }: Pick<Desk, 'panel'>): (to: Panel) => void {
  const from = panel.value;
  return (to) => {
    if (panel.value === from) panel.value = to;
  };
}
