/** In a thread: passes on a sign of life at the checks of its work, but not at every one. */
export function createBeats(post: () => void): () => void {
  let last = -Infinity;
  return () => {
    const now = performance.now();
    if (now - last < BEAT_MS) return;
    last = now;
    post();
  };
}

/** Far below what anybody waits, milliseconds. */
const BEAT_MS = 500;
