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
