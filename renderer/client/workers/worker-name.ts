/** A worker's name tells it the language of its window: "lay de". */
import { type Language, languageNamed, spokenLanguage } from '../../../shared-core/wording/say.ts';

export function workerName(task: string): string {
  return `${task} ${spokenLanguage()}`;
}

export function languageOfWorker(name: string): Language {
  return languageNamed(name.split(' ').at(-1) ?? '') ?? 'en';
}
