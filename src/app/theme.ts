import { computed, effect, signal } from '@preact/signals';

export type Theme = 'light' | 'dark';

const kept = 'lossbook-theme';

function keptTheme(): Theme | null {
  try {
    const value = localStorage.getItem(kept);
    return value === 'light' || value === 'dark' ? value : null;
  } catch {
    return null;
  }
}

const asked = signal<Theme | null>(keptTheme());
const systemIsDark = matchMedia('(prefers-color-scheme: dark)');
const system = signal<Theme>(systemIsDark.matches ? 'dark' : 'light');

/** The theme that is shown: the reader's choice, else the system's. Charts on canvas are drawn anew with it. */
export const theme = computed<Theme>(() => asked.value ?? system.value);

/** Keeps the document in the theme that is chosen. Called once. */
export function followTheme(): void {
  systemIsDark.addEventListener('change', () => {
    system.value = systemIsDark.matches ? 'dark' : 'light';
  });
  effect(() => {
    document.documentElement.dataset.theme = theme.value;
  });
}

export function switchTheme(): void {
  asked.value = theme.peek() === 'dark' ? 'light' : 'dark';
  try {
    localStorage.setItem(kept, asked.value);
  } catch {
    // A browser that keeps nothing still switches for this visit.
  }
}
