/** Pages of this browser that show the same book tell each other when it changed. */
export interface Tabs {
  tell(): void;
}

/** @param onTold another page changed the book */
export function joinTabs(onTold: () => void): Tabs {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => {} };
  const channel = new BroadcastChannel('lossbook-book');
  channel.onmessage = onTold;
  return { tell: () => channel.postMessage('changed') };
}
