/**
 * Lets a worker hear the messages that wait for it. A message to oneself is heard after those that came before, at once;
 * a timer would wait four milliseconds each time.
 */
export function createBreathing(): () => Promise<void> {
  const { port1, port2 } = new MessageChannel();
  const waiting: (() => void)[] = [];
  port1.onmessage = () => waiting.shift()?.();
  return () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      port2.postMessage(0);
    });
}
