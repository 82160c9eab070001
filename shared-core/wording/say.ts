/**
 * Every sentence that a maker reads, by its id. The texts lie in one catalogue of ICU messages for each language
 * (`en.json`, `de.json`); the program speaks the language that its edge has chosen (`speak`): the window by its
 * choice, a worker and the services by the window that they serve, the headless command by its option.
 */
import { IntlMessageFormat } from 'intl-messageformat';
import german from './de.json' with { type: 'json' };
import english from './en.json' with { type: 'json' };
import { type Language, languages, signsOf } from './languages.ts';

export { type Language, languageNamed, languages } from './languages.ts';

export type MessageId = keyof typeof english;

/** A number is written with the language's decimal sign, ungrouped; nothing is written for null and undefined. */
export type MessageValue = string | number | null | undefined;

const catalogues: Readonly<Record<Language, Readonly<Record<string, string>>>> = {
  en: english,
  de: german,
};

let spoken: () => Language = () => 'en';

/**
 * From now on `say` speaks this language, or the one that the function names each time: a service speaks to several
 * windows. Texts said before stay as they are.
 */
export function speak(language: Language | (() => Language)): void {
  spoken = typeof language === 'string' ? () => language : language;
}

export function spokenLanguage(): Language {
  return spoken();
}

/** What is made in English whatever is spoken: headings and words of files, which are the same in every language. */
export function inEnglish<Made>(make: () => Made): Made {
  const before = spoken;
  spoken = () => 'en';
  try {
    return make();
  } finally {
    spoken = before;
  }
}

export const messageIds = Object.keys(english) as readonly MessageId[];

/** Whether a text is the id of a message. */
export function hasMessage(id: string): id is MessageId {
  return Object.hasOwn(english, id);
}

/**
 * The message in the spoken language; in English where that lacks it. values: one for each placeholder; a placeholder
 * with a plural takes a number. Throws a RangeError for an id that the catalogue does not have.
 */
export function say(id: MessageId, values?: Readonly<Record<string, MessageValue>>): string {
  return saidIn(spoken(), id, values);
}

/** The message in each language, English first: for what was made in one language and is met in another. */
export function sayInEvery(
  id: MessageId,
  values?: Readonly<Record<string, MessageValue>>,
): readonly string[] {
  return (Object.keys(languages) as Language[]).map((language) => saidIn(language, id, values));
}

function saidIn(
  language: Language,
  id: MessageId,
  values: Readonly<Record<string, MessageValue>> | undefined,
): string {
  const text = catalogues[language][id] ?? english[id];
  if (text === undefined) throw new RangeError(`no message ${id}`);
  if (!text.includes('{') && !text.includes("''")) return text;
  const shown: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(values ?? {})) shown[name] = shownValue(language, value);
  return String(compiled(language, id, text).format(shown));
}

/** Whole numbers stay numbers, which plurals ask for; others are written with the language's decimal sign. */
function shownValue(language: Language, value: MessageValue): string | number {
  if (typeof value !== 'number' || Number.isInteger(value)) return value ?? '';
  return String(value).replace('.', signsOf(language).decimal);
}

const formats = new Map<string, IntlMessageFormat>();

/** Reading a message costs a hundred times as much as filling it in, so each is read once. */
function compiled(language: Language, id: string, text: string): IntlMessageFormat {
  const key = `${language} ${id}`;
  const known = formats.get(key);
  if (known) return known;
  const made = new IntlMessageFormat(text, language, undefined, { ignoreTag: true });
  formats.set(key, made);
  return made;
}
