import SqliteDatabase from 'better-sqlite3';
import { expect, test } from 'vitest';
import { emptyFacts } from '../../../shared-core/stash/kinds.ts';
import { openAsking } from '../asking.ts';
import { asOfSchema } from '../older-schema.ts';

test('a batting of an earlier version has its new facts, not known yet, and keeps the others', async () => {
  const asking = openAsking();
  const { itemId } = await asking.get('saveItem', {
    itemId: null,
    kind: 'batting',
    name: 'Fleecewell',
    colour: '',
    place: '',
    notes: '',
    facts: { widthMm: 1500, loftMm: 9 },
    typed: {},
  });
  asking.services.close();
  const database = new SqliteDatabase(asking.dataFile);
  database
    .prepare("UPDATE item SET facts = json_remove(facts, '$.lineLimitMm', '$.heldBy', '$.needsBacking')")
    .run();
  asOfSchema(database, 10);
  database.close();
  const again = openAsking({ dataFile: asking.dataFile });
  const { shelf } = await again.get('readItem', { itemId });
  expect(shelf.item.facts).toEqual({ ...emptyFacts('batting'), widthMm: 1500, loftMm: 9 });
  again.services.close();
});
