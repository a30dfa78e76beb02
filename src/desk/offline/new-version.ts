import type { Signal } from '@preact/signals';

/** How long a waiting build may take to answer before the page goes on without it, milliseconds. */
const ANSWERED_AFTER_MS = 4000;

/**
 * Before anything of the page has begun: a build that waits takes over where no other page holds the old one, and the page is
 * loaded from it. Resolves when this build goes on.
 */
export async function takeWaitingVersion(): Promise<void> {
  const { serviceWorker } = navigator;
  const waiting = serviceWorker.controller && (await serviceWorker.getRegistration())?.waiting;
  if (!waiting) return;
  await new Promise<void>((resolve) => {
    const anew = () => location.reload();
    const { port1, port2 } = new MessageChannel();
    // Listened to until the build says that it waits: it may take over late, and no page goes on under a build not its own.
    serviceWorker.addEventListener('controllerchange', anew);
    port1.onmessage = () => {
      serviceWorker.removeEventListener('controllerchange', anew);
      resolve();
    };
    waiting.postMessage('take over', [port2]);
    setTimeout(resolve, ANSWERED_AFTER_MS);
  });
}

/** Keeps the static build for work without a network, and says when a newer one waits to be taken. */
export async function keepOffline(isWaiting: Signal<boolean>): Promise<void> {
  const { serviceWorker } = navigator;
  const registration = await serviceWorker.register('service-worker.js').catch(() => undefined);
  if (!registration) return;
  // Without a build that serves this page there is nothing to be replaced.
  const look = () => (isWaiting.value = registration.waiting !== null && serviceWorker.controller !== null);
  look();
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
}
