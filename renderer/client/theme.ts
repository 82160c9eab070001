/** Light or dark: as the system has it until the maker chooses, and then as chosen, on this machine. */
export type ThemeChoice = 'system' | 'light' | 'dark';

const storageKey = 'bolt-and-baffle.theme';
const darkQuery = window.matchMedia('(prefers-color-scheme: dark)');

export function chosenTheme(): ThemeChoice {
  const stored = window.localStorage.getItem(storageKey);
  return stored === 'light' || stored === 'dark' ? stored : 'system';
}

export function chooseTheme(choice: ThemeChoice): void {
  if (choice === 'system') window.localStorage.removeItem(storageKey);
  else window.localStorage.setItem(storageKey, choice);
  showTheme();
}

export function showTheme(): void {
  const choice = chosenTheme();
  const isDark = choice === 'dark' || (choice === 'system' && darkQuery.matches);
  document.documentElement.dataset.theme = isDark ? 'dark' : 'light';
}

darkQuery.addEventListener('change', showTheme);
