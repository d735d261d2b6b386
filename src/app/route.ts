import { signal } from '@preact/signals';

/** Where the reader is and how they look at it; never data of a log. */
export interface Route {
  /** Name of the screen; empty for none asked. */
  readonly screen: string;
  readonly view: Readonly<Record<string, string>>;
}

/** `#/review?flight=sample:x&frame=inertial` → screen and view. */
export function parseRoute(hash: string): Route {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?', 2);
  return { screen: path, view: Object.fromEntries(new URLSearchParams(query)) };
}

export function routeHash(route: Route): string {
  const query = new URLSearchParams(route.view).toString();
  return `#/${route.screen}${query ? `?${query}` : ''}`;
}

export const route = signal<Route>(parseRoute(location.hash));

addEventListener('hashchange', () => {
  route.value = parseRoute(location.hash);
});

/** Goes to a screen; the browser's back button leads back. */
export function go(screen: string, view: Readonly<Record<string, string>> = {}): void {
  const hash = routeHash({ screen, view });
  if (hash === location.hash) route.value = parseRoute(hash);
  else location.hash = hash;
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
