import { expect, test } from 'vitest';
import { addSizesUnmade, styleName } from '../../../../shared-core/plan/edits/add-sizes.ts';
import { coatTotal } from '../../../../shared-core/plan/model/sizes.ts';
import { piece, plan, rectangle } from '../../../fixtures/small-workshop.ts';

const sized = (size: string, lengthMm: number) =>
  plan({
    id: `coat ${size}`,
    name: `Lapwing, size ${size}`,
    size,
    pieces: [piece('panel', rectangle(lengthMm, 500))],
  });
const forty = { ...sized('40', 700), coatCount: 3 };

test('sizes for a pattern come into the plan, and no coat more is made', () => {
  const edited = addSizesUnmade(forty, [sized('42', 720), sized('44', 745)]);
  if (!edited.ok) throw new Error(JSON.stringify(edited.problems));
  expect(edited.value.said).toBe('Sizes 42 and 44 added; none is made.');
  expect(edited.value.plan.sizes?.map(({ size, coatCount }) => [size, coatCount])).toEqual([
    ['42', 0],
    ['44', 0],
  ]);
  expect(coatTotal(edited.value.plan)).toBe(3);
});

test('a size that is made already keeps its number of coats', () => {
  const batch = { ...forty, sizes: [{ size: '38', coatCount: 2, pieces: sized('38', 690).pieces }] };
  const edited = addSizesUnmade(batch, [sized('42', 720)]);
  expect(edited.ok && edited.value.plan.sizes?.map(({ coatCount }) => coatCount)).toEqual([2, 0]);
});

test('one size that cannot come in keeps all of them out, and each is told', () => {
  const strange = plan({
    name: 'Vest',
    size: '46',
    pieces: [piece('panel', rectangle(600, 400), { cutFrom: [{ slotId: 'fur', plyCount: 1 }] })],
  });
  const edited = addSizesUnmade(forty, [sized('42', 720), sized('40', 700), strange]);
  expect(edited.ok ? [] : edited.problems.map(({ where }) => where)).toEqual(['Size 40', 'The plan Vest']);
  expect(addSizesUnmade(forty, []).ok).toBe(false);
});

test('the style of a drafted plan is its name without the size', () => {
  expect(styleName({ name: 'Lapwing, size 40', size: '40' })).toBe('Lapwing');
  expect(styleName({ name: 'Lapwing', size: '40' })).toBe('Lapwing');
  expect(styleName({ name: 'Lapwing, size 40', size: '4' })).toBe('Lapwing, size 40');
  expect(styleName({ name: 'Lapwing, size ', size: '' })).toBe('Lapwing, size ');
});
