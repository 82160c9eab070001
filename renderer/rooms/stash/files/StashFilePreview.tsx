/** What a stash file or pasted rows would change, line by line, to be read before saying yes. */
import type { StashFileChanges } from '../../../../shared-core/contract/stash-file-calls.ts';
import style from './StashFileSheet.module.css';

export function StashFilePreview({ changes }: { changes: StashFileChanges }) {
  const { newItemCount, changedItemCount, newLotCount, correctionCount, lineCount } = changes;
  const all = newItemCount + changedItemCount + newLotCount + correctionCount;
  const rest = all - changes.changes.length;
  const counts = [
    counted(newItemCount, 'new item', 'new items'),
    counted(changedItemCount, 'changed item', 'changed items'),
    counted(newLotCount, 'new lot', 'new lots'),
    counted(correctionCount, 'correction', 'corrections'),
  ].filter((text) => text !== null);
  return (
    <section className={style.preview} aria-label="What would change">
      <p className={style.counts} role="status">
        {all === 0
          ? `${counted(lineCount, 'line', 'lines')} read: nothing would change.`
          : `Would bring ${counts.join(', ')}.`}
      </p>
      {all > 0 && (
        <ul className={style.changes}>
          {changes.changes.map((change) => (
            <li key={`${change.line} ${change.kind}`} className={style.change}>
              <span className={`${style.line} number`}>line {change.line}</span>
              <span>
                <strong>{change.itemName}</strong> {change.text}
              </span>
            </li>
          ))}
        </ul>
      )}
      {rest > 0 && <p className="quiet">And {rest} more.</p>}
    </section>
  );
}

function counted(count: number, one: string, many: string): string | null {
  return count === 0 ? null : `${count} ${count === 1 ? one : many}`;
}
