import { signal } from '@preact/signals';
import { parseRoute, type Route, routeHash } from './routeText.ts';

export const route = signal<Route>(parseRoute(location.hash));

addEventListener('hashchange', () => {
  route.value = parseRoute(location.hash);
});

/**
 * Goes to a screen; the browser's back button leads back. The route follows at once: the browser tells of the new
 * address in a later task, and a view changed before that would be the old screen's.
 */
export function go(screen: string, view: Readonly<Record<string, string>> = {}): void {
  const hash = routeHash({ screen, view });
  location.hash = hash;
  route.value = parseRoute(hash);
}

/** Changes how the present screen is looked at; null takes an entry out. No entry in the history. */
export function setView(changes: Readonly<Record<string, string | null>>): void {
  const view: Record<string, string> = { ...route.peek().view };
  for (const [key, value] of Object.entries(changes)) {
    if (value === null) delete view[key];
    else view[key] = value;
  }
  const next = { ...route.peek(), view };
  history.replaceState(null, '', routeHash(next));
  route.value = next;
}
