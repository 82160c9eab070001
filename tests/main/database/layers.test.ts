import SqliteDatabase from 'better-sqlite3';
import { expect, test } from 'vitest';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { quiltedCoat } from '../../core/requirement/small-coat.ts';
import { type Asking, openAsking } from '../asking.ts';
import { asOfSchema } from '../older-schema.ts';

const drafted = 'Sew a trial body. Quilt first, then cut to the outline. Pleat of 40 mm.';

const plies = (plyCount: number) => [
  { slotId: 'shell', plyCount: 1 },
  { slotId: 'batting', plyCount },
];

function coat(name: string, more: Partial<CoatPlan>): CoatPlan {
  const [back, front] = quiltedCoat().pieces;
  const pieces = [
    { ...back!, cutFrom: plies(2) },
    { ...front!, cutFrom: plies(1) },
  ];
  const slots = quiltedCoat().slots.map((slot) => ({ ...slot, itemId: null }));
  return { ...quiltedCoat({ pieces, slots }), name, ...more };
}

/** A file of the schema before, in which a plan had one rise (or none) for all its layers. */
async function oldFile(plans: readonly (readonly [CoatPlan, riseMm: number | null])[]): Promise<Asking> {
  const asking = openAsking();
  const ids: string[] = [];
  for (const [plan] of plans) {
    const { planId } = await asking.get('savePlan', {
      plan: { ...plan, id: 'new' },
      basedOn: null,
      said: '',
    });
    ids.push(planId);
  }
  asking.services.close();
  const database = new SqliteDatabase(asking.dataFile);
  const stays = database
    .prepare("SELECT sql FROM sqlite_schema WHERE name = 'plan_revision_stays'")
    .pluck()
    .get() as string;
  database.exec('DROP TRIGGER plan_revision_stays');
  const rewrite = database.prepare(
    "UPDATE plan_revision SET plan = json_set(plan, '$.quilting.riseMm', ?) WHERE plan_id = ? AND json_type(plan, '$.quilting') = 'object'",
  );
  for (const [index, [, riseMm]] of plans.entries()) rewrite.run(riseMm, ids[index]);
  database.exec(stays);
  asOfSchema(database, 8);
  database.close();
  return openAsking({ dataFile: asking.dataFile });
}

async function planNamed(asking: Asking, name: string): Promise<CoatPlan> {
  const { rows } = await asking.get('listPlans', {});
  const { plan } = await asking.get('readPlan', { planId: rows.find((row) => row.name === name)!.id });
  return plan;
}

const notesOf = async (asking: Asking) =>
  (await asking.get('workshopFacts', {})).upgradeNotes.map(({ note }) => note);

test('one rise for all layers becomes that of the most, and the maker is told to measure the others', async () => {
  const asking = await oldFile([[coat('Heron', {}), 7.5]]);
  const { quilting } = await planNamed(asking, 'Heron');
  expect(quilting).toEqual({
    ...quiltedCoat().quilting,
    measures: [
      { battingPlyCount: 2, spacingMm: 100, riseMm: 7.5, overLinesRatio: null, alongLinesRatio: null },
    ],
  });
  const notes = await notesOf(asking);
  expect(notes.find((note) => note.includes('rise measured for Heron'))).toContain(
    'pieces with 2 layers of batting, and for others in proportion',
  );
  expect(notes.some((note) => note.includes('at least 2.5 % both ways'))).toBe(true);
});

test('a plan without a measured rise keeps to its estimates, and is saved again as it is', async () => {
  const asking = await oldFile([[coat('Teal', {}), null]]);
  const plan = await planNamed(asking, 'Teal');
  expect(plan.quilting).toEqual(quiltedCoat().quilting);
  await asking.get('savePlan', { plan: { ...plan, notes: 'hemmed' }, basedOn: 1, said: 'Notes' });
  expect((await notesOf(asking)).some((note) => note.includes('rise measured'))).toBe(false);
});

test('notes that said to quilt first, which no figure followed, say it no more, and the rest of them stays', async () => {
  const plain = coat('Plover', { notes: 'Quilt first of all the sleeves.', quilting: null });
  const asking = await oldFile([
    [coat('Curlew', { notes: drafted }), null],
    [plain, null],
  ]);
  expect((await planNamed(asking, 'Curlew')).notes).toBe('Sew a trial body. Pleat of 40 mm.');
  expect((await planNamed(asking, 'Plover')).notes).toBe(plain.notes);
  const told = (await notesOf(asking)).filter((note) => note.includes('said to quilt first'));
  expect(told).toHaveLength(1);
  expect(told[0]).toContain('Curlew');
});

test('a file without quilted pieces is told nothing, and revisions stay unchangeable afterwards', async () => {
  const pieces = coat('Dipper', {}).pieces.map((piece) => ({ ...piece, quilted: null }));
  const asking = await oldFile([[coat('Dipper', { pieces }), null]]);
  expect(await notesOf(asking)).toEqual([]);
  asking.services.close();
  const database = new SqliteDatabase(asking.dataFile);
  expect(() => database.exec("UPDATE plan_revision SET said = 'x'")).toThrow('is never changed');
  database.close();
});
