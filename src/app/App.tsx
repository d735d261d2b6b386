import { useEffect, useRef } from 'preact/hooks';
import { CAUTIONS } from '../review/cautions.ts';
import { Guide, GuideAgain } from './guide/Guide.tsx';
import { Announcements } from './parts/Announcements.tsx';
import { DropAnywhere } from './parts/DropAnywhere.tsx';
import { TermPanel } from './parts/TermPanel.tsx';
import { ThemeSwitch } from './parts/ThemeSwitch.tsx';
import { UnitSwitch } from './parts/UnitSwitch.tsx';
import { route } from './route.ts';
import { routeHash } from './routeText.ts';
import { screens } from './screens/screens.ts';
import { current, notice } from './state.ts';

/** What was worth knowing on the screen that is left. */
function dismissNotice(): void {
  notice.value = null;
}

/** The frame: what exists on top, the screen that the address names, what the page is for at the foot. */
export function App() {
  const offered = screens.filter((s) => s.offered());
  const asked = offered.find((s) => s.name === route.value.screen) ?? offered[0];
  const main = useRef<HTMLElement>(null);
  const flight = current.value?.source.id;
  const title = asked?.title() ?? '';

  useEffect(() => {
    document.title = title ? `${title} – lossbook` : 'lossbook';
  }, [title]);

  // A reader who works by keyboard or by ear starts at the new screen's head, not where the old one ended.
  const seen = useRef(`${asked?.name} ${flight}`);
  useEffect(() => {
    const now = `${asked?.name} ${flight}`;
    if (seen.current === now) return;
    seen.current = now;
    scrollTo(0, 0);
    main.current?.querySelector('h1')?.focus({ preventScroll: true });
  });

  return (
    <div class="sheet">
      <button type="button" class="skip" onClick={() => main.current?.focus()}>
        Skip to the content
      </button>
      <header class="top">
        <span class="name">lossbook</span>
        <nav aria-label="Screens">
          {offered.map((s) => (
            <a
              key={s.name}
              href={routeHash({ screen: s.name, view: s.view() })}
              aria-current={s === asked ? 'page' : undefined}
              onClick={dismissNotice}
            >
              {s.label}
            </a>
          ))}
        </nav>
        <UnitSwitch />
        <ThemeSwitch />
      </header>
      <Announcements />
      <main id="main" ref={main} tabIndex={-1}>
        {asked ? <asked.Screen /> : null}
      </main>
      <footer class="foot">
        {/* The hyphen of “no-go” is no place to break a line. */}
        <p>
          {CAUTIONS.join(' ').replaceAll('no-go', 'no\u2011go')} Nothing you open here leaves this machine.
        </p>
        <GuideAgain />
        <a class="plain" href="licenses.txt">
          Licenses of what is inside
        </a>
      </footer>
      <DropAnywhere />
      <TermPanel />
      <Guide />
    </div>
  );
}
