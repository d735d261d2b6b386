import type { FunctionComponent } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A screen whose code is fetched when it is first shown. @param load fetches it */
export function lazyScreen(load: () => Promise<FunctionComponent>): FunctionComponent {
  let known: FunctionComponent | null = null;
  return function Lazy() {
    const [Screen, show] = useState<FunctionComponent | null>(() => known);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      if (Screen !== null || failed) return;
      let wanted = true;
      load().then(
        (loaded) => {
          known = loaded;
          if (wanted) show(() => loaded);
        },
        () => {
          if (wanted) setFailed(true);
        },
      );
      return () => {
        wanted = false;
      };
    }, [Screen, failed]);
    // The frame puts the focus on a new screen's head; this one had none yet.
    const late = known !== null && Screen === known;
    useEffect(() => {
      if (late && document.activeElement === document.body)
        document.querySelector<HTMLElement>('main h1')?.focus({ preventScroll: true });
    }, [late]);
    if (Screen !== null) return <Screen />;
    if (!failed) return <p class="detail">Fetching this screen …</p>;
    return (
      <>
        <h1 tabIndex={-1}>This screen could not be fetched.</h1>
        <p class="detail">
          Its server does not answer, or has a newer lossbook. Try again; if that does not help, reload the
          page.
        </p>
        <button type="button" class="button" onClick={() => setFailed(false)}>
          Try again
        </button>
      </>
    );
  };
}
