/** What a stash file or pasted rows would change, line by line, to be read before saying yes. */
import { say } from '../../../../shared-core/wording/say.ts';
import type { StashFileChanges } from '../../../../shared-core/contract/stash-file-calls.ts';
import style from './StashFileSheet.module.css';

type CountedThings =
  | 'stash-file-preview.new-items'
  | 'stash-file-preview.changed-items'
  | 'stash-file-preview.new-lots'
  | 'stash-file-preview.corrections'
  | 'stash-file-preview.lines';

export function StashFilePreview({ changes }: { changes: StashFileChanges }) {
  const { newItemCount, changedItemCount, newLotCount, correctionCount, lineCount } = changes;
  const all = newItemCount + changedItemCount + newLotCount + correctionCount;
  const rest = all - changes.changes.length;
  const counts = [
    counted(newItemCount, 'stash-file-preview.new-items'),
    counted(changedItemCount, 'stash-file-preview.changed-items'),
    counted(newLotCount, 'stash-file-preview.new-lots'),
    counted(correctionCount, 'stash-file-preview.corrections'),
  ].filter((text) => text !== null);
  return (
    <section className={style.preview} aria-label={say('stash-file-preview.what-would-change')}>
      <p className={style.counts} role="status">
        {all === 0
          ? say('stash-file-preview.read-nothing-would-change', {
              counted: counted(lineCount, 'stash-file-preview.lines'),
            })
          : say('stash-file-preview.would-bring', { counts: counts.join(', ') })}
      </p>
      {all > 0 && (
        <ul className={style.changes}>
          {changes.changes.map((change) => (
            <li key={`${change.line} ${change.kind}`} className={style.change}>
              <span className={`${style.line} number`}>
                {say('stash-file-preview.line-2', { line: change.line })}
              </span>
              <span>
                <strong>{change.itemName}</strong> {change.text}
              </span>
            </li>
          ))}
        </ul>
      )}
      {rest > 0 && <p className="quiet">{say('stash-file-preview.and-more', { rest })}</p>}
    </section>
  );
}

function counted(count: number, things: CountedThings): string | null {
  return count === 0 ? null : say(things, { count });
}
