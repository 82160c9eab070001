/**
 * The language of the window: as the browser has it until the maker chooses, and then as chosen, on this machine. It is
 * spoken as soon as this file is read, which is first of all, since texts at the top of a module are said but once.
 */
import { type Language, languageNamed, speak } from '../../shared-core/wording/say.ts';

const storageKey = 'bolt-and-baffle.language';

export function chosenLanguage(): Language {
  const stored = languageNamed(window.localStorage.getItem(storageKey) ?? '');
  return stored ?? languageNamed(window.navigator.language) ?? 'en';
}

/** The window begins anew in it. */
export function chooseLanguage(language: Language): void {
  window.localStorage.setItem(storageKey, language);
  window.location.reload();
}

speak(chosenLanguage());
document.documentElement.lang = chosenLanguage();
