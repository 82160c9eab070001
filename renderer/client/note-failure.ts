/** Tells the log of a failure in the window: its kind and where in the program, never its words, which may quote a maker's. */
import { say } from '../../shared-core/wording/say.ts';
import { call } from './api.ts';

/** A room that fails each time it is drawn must not fill the log. */
const maxNotes = 20;
let noteCount = 0;

/** place: the room, or a word for what was done; lower-case letters, blanks and hyphens. Never throws, and nobody waits for it. */
export function noteFailure(place: string, thrown: unknown): void {
  noteCount++;
  if (noteCount > maxNotes) return;
  const [kind, stack] = thrown instanceof Error ? [thrown.name, thrown.stack ?? ''] : [typeof thrown, ''];
  const frames = stack.split('\n').filter((line) => /^\s+at /.test(line));
  void call('noteWindowFailure', 'own', {
    place,
    kind: kind.slice(0, 200),
    stack: frames.join('\n').slice(0, 20_000),
  });
}

/** To be added to a sentence about a failure that was noted. */
export const logSaysWhere = say('note-failure.the-log-under-settings-says-where');
