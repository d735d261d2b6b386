import { switchTheme, theme } from '../theme.ts';

/** Names the theme it leads to. */
export function ThemeSwitch() {
  return (
    <button type="button" class="plain" onClick={switchTheme}>
      {theme.value === 'dark' ? 'Light' : 'Dark'}
      <span class="unseen"> theme</span>
    </button>
  );
}
