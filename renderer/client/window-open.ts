/**
 * What the window hears from the program behind it. Over the loopback door the page holds one stream open, by which the
 * host also knows when its last window has closed; in Electron the preload listens.
 */

declare global {
  interface Window {
    readonly boltAndBaffleChanges?: (listener: () => void) => void;
  }
}

const listeners = new Set<() => void>();

function tell(): void {
  for (const listener of listeners) listener();
}

if (window.boltAndBaffleChanges) window.boltAndBaffleChanges(tell);
else if (location.protocol === 'http:') new EventSource('window').addEventListener('change', tell);

/** Calls the listener when another desk has changed the workshop, or may have. Gives what ends it. */
export function onChangesElsewhere(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}
