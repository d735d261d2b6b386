import type { FunctionComponent } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A screen whose code is fetched when it is first shown. @param load fetches it */
export function lazyScreen(load: () => Promise<FunctionComponent>): FunctionComponent {
  let known: FunctionComponent | null = null;
  return function Lazy() {
    const [Screen, show] = useState<FunctionComponent | null>(() => known);
    useEffect(() => {
      if (Screen !== null) return;
      let wanted = true;
      void load().then((loaded) => {
        known = loaded;
        if (wanted) show(() => loaded);
      });
      return () => {
        wanted = false;
      };
    }, [Screen]);
    // The frame puts the focus on a new screen's head; this one had none yet.
    const late = known !== null && Screen === known;
    useEffect(() => {
      if (late && document.activeElement === document.body)
        document.querySelector<HTMLElement>('main h1')?.focus({ preventScroll: true });
    }, [late]);
    return Screen === null ? <p class="detail">Fetching this screen …</p> : <Screen />;
  };
}
