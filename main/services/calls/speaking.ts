/** Each call is answered in the language of the window that asks; what is said outside a call, in that of the machine. */
import { AsyncLocalStorage } from 'node:async_hooks';
import { err, type Result } from '../../../shared-core/measure/problem.ts';
import { type Language, languageNamed, speak } from '../../../shared-core/wording/say.ts';

const asked = new AsyncLocalStorage<Language>();
let ownLanguage: Language = 'en';

speak(() => asked.getStore() ?? ownLanguage);

/** What the program itself speaks: its menu, what it prints. tag: as the system names it, "de-AT"; a strange one is English. */
export function speakAtHome(tag: string): void {
  ownLanguage = languageNamed(tag) ?? 'en';
}

/** Does something, and all that comes of it, in the language that the envelope of a call names. */
export function speakingFor<Answer>(envelope: unknown, answer: () => Answer): Answer {
  const tag =
    typeof envelope === 'object' && envelope !== null && 'language' in envelope ? envelope.language : null;
  const language = typeof tag === 'string' ? languageNamed(tag) : null;
  return language === null ? answer() : asked.run(language, answer);
}

/** An answer whose problems are said now: those that stand ready are said anew whenever they are read. */
export function saidNow<Value>(outcome: Result<Value>): Result<Value> {
  return outcome.ok
    ? outcome
    : err(...outcome.problems.map(({ where, what, fix }) => ({ where, what, fix })));
}
