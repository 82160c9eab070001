import { describe, expect, it } from 'vitest';
import { draftCoat } from '../../../../shared-core/draft/draft.ts';
import { cautions, isFlammabilityExempt } from '../../../../shared-core/requirement/law/cautions.ts';
import { isForChild } from '../../../../shared-core/requirement/law/child-size.ts';
import { coat as drafted } from '../../draft/bodies.ts';
import { item, slot } from '../../../fixtures/small-workshop.ts';
import { filled, nothingChosen, quiltedCoat, smallCoat, stuffedCoat } from '../small-coat.ts';

const kinds = (...args: Parameters<typeof cautions>) => cautions(...args).map(({ kind }) => kind);
const says = (kind: string, ...args: Parameters<typeof cautions>) =>
  cautions(...args).find((caution) => caution.kind === kind)?.says ?? '';

describe('cautions', () => {
  it('each is said once, in the order of the work, and defers to somebody', () => {
    const cords = ['hood cord', 'hem cord'].map((name) => slot(name, 'fastening'));
    const coat = stuffedCoat({ slots: [...stuffedCoat().slots, ...cords] });
    const items = filled({
      shell: item('cloth', 'taffeta', { fibre: 'nylon' }),
      fill: item('fill', 'duck down'),
    });
    expect(kinds(coat, items)).toEqual([
      'blade',
      'hot iron',
      'down dust',
      'drawstrings, US',
      'drawstrings, EU',
      'flammability',
      'filled goods',
    ]);
    expect(cautions(coat, items).every(({ defersTo, source }) => defersTo !== '' && source !== '')).toBe(
      true,
    );
    expect(cautions(coat, items)[3]?.slotIds).toEqual(['hood cord', 'hem cord']);
  });
  it('a plain cotton coat hears neither of hot irons nor of down', () => {
    const items = filled({ shell: item('cloth', 'drill', { fibre: 'cotton', arealMassGPerM2: 240 }) });
    expect(kinds(smallCoat(), items)).toEqual(['blade', 'flammability']);
  });
  it('polyester clusters make no down dust', () => {
    expect(
      kinds(stuffedCoat(), filled({ fill: item('fill', 'clusters', { fibre: 'polyester' }) })),
    ).not.toContain('down dust');
  });
  it('batting is filling when it is sold', () => {
    expect(kinds(quiltedCoat(), nothingChosen)).toContain('filled goods');
  });
  it('a cord on a child’s coat is spoken of as one', () => {
    const withCord = { slots: [slot('cord', 'fastening')] };
    expect(says('drawstrings, US', smallCoat({ ...withCord, size: '4T' }), nothingChosen)).toMatch(
      /^This coat is for a child/,
    );
    expect(says('drawstrings, US', smallCoat({ ...withCord, size: '40' }), nothingChosen)).toMatch(
      /^If it is for a child/,
    );
  });
  it('a child’s coat with a hood hears of cords before one is drawn in, for both markets', () => {
    const hooded = draftCoat(drafted('children', { hood: 'two panels' }));
    if (!hooded.ok) throw new Error('not drafted');
    expect(kinds(hooded.value.plan, nothingChosen)).toEqual(
      expect.arrayContaining(['drawstrings, US', 'drawstrings, EU']),
    );
    expect(says('drawstrings, EU', hooded.value.plan, nothingChosen)).toMatch(
      /^In the EU no cord at hood or neck up to 7 years .* 7 to 14 none there with free ends\. At waist and hem .* 14 cm/,
    );
    const plain = draftCoat(drafted('children'));
    expect(plain.ok && kinds(plain.value.plan, nothingChosen)).not.toContain('drawstrings, EU');
    const grown = draftCoat(drafted('women', { hood: 'two panels' }));
    expect(grown.ok && kinds(grown.value.plan, nothingChosen)).not.toContain('drawstrings, EU');
  });
  it('knows a child’s size by its name', () => {
    expect(isForChild(smallCoat({ size: '4T', isForChild: false }))).toBe(false);
    expect(isForChild(smallCoat({ size: '44', isForChild: true }))).toBe(true);
    const sized = (size: string) => isForChild(smallCoat({ size }));
    const childs = [
      '2T',
      'age 6',
      'ages 3-4',
      '7-8 years',
      '10 y',
      'kids 8',
      'height 104',
      '116 cm',
      '128/134 cm',
    ];
    expect(childs.filter((size) => !sized(size))).toEqual([]);
    const grown = ['40', 'M tall', 'UK 14', 'age 35', '20 years', 'XXL'];
    expect(grown.filter(sized)).toEqual([]);
  });
  it('takes no coat for a child’s because the word age or years stands in its name', () => {
    expect(isForChild(smallCoat({ name: 'Golden age parka', size: '42' }))).toBe(false);
    expect(isForChild(smallCoat({ name: 'Coat of two years', size: 'M' }))).toBe(false);
  });
  it('a plain 116 is a child’s height on small pieces and a grown girth on large ones', () => {
    const sized = (kind: 'children' | 'women' | 'men', size: string, more: object) => {
      const made = draftCoat({ ...drafted(kind, { hood: 'two panels' }, more), size });
      if (!made.ok) throw new Error(JSON.stringify(made.problems));
      const { isForChild: _, ...unsaid } = made.value.plan;
      return isForChild(unsaid);
    };
    expect(sized('children', '116', {})).toBe(true);
    expect(sized('children', '92', { bustMm: 540, waistMm: 520, hipMm: 570, heightMm: 920 })).toBe(true);
    expect(sized('children', '152', { bustMm: 780, waistMm: 680, hipMm: 820, heightMm: 1520 })).toBe(true);
    expect(sized('women', '116', { bustMm: 1160, waistMm: 1000, hipMm: 1220 })).toBe(false);
    expect(sized('men', '92', { bustMm: 920, waistMm: 800, hipMm: 950 })).toBe(false);
  });
  it('names the cloth that may have to be tested for burning', () => {
    const light = filled({ shell: item('cloth', 'voile', { fibre: 'cotton', arealMassGPerM2: 60 }) });
    expect(says('flammability', smallCoat(), light)).toContain('may ask for a test of: shell');
    const heavy = filled({ shell: item('cloth', 'drill', { fibre: 'cotton', arealMassGPerM2: 240 }) });
    expect(says('flammability', smallCoat(), heavy)).toContain('ask for no test of its cloths');
    const brushed = filled({
      shell: item('cloth', 'drill', { fibre: 'cotton', arealMassGPerM2: 240, finish: 'brushed' }),
    });
    expect(says('flammability', smallCoat(), brushed)).toContain('may ask for a test of: shell');
  });
  it('a raised polyester fleece is exempt by its fibre, at any weight; a raised cotton is not by its weight', () => {
    const exempt = (name: string, facts: object) => isFlammabilityExempt(item('cloth', name, facts));
    expect(exempt('fleece', { fibre: 'polyester', arealMassGPerM2: 200 })).toBe(true);
    expect(exempt('fleece', { fibre: '80 % polyester, 20 % wool', arealMassGPerM2: 60 })).toBe(true);
    expect(exempt('flannel', { fibre: 'cotton', arealMassGPerM2: 160 })).toBe(false);
    expect(exempt('flannel', { arealMassGPerM2: 160 })).toBeNull();
    const fleece = filled({ shell: item('cloth', 'fleece', { fibre: 'polyester', hasNap: true }) });
    expect(says('flammability', smallCoat(), fleece)).toContain('ask for no test of its cloths');
  });
  it('an interfacing between shell and lining is no cloth for that test', () => {
    const coat = smallCoat({
      slots: [...smallCoat().slots, slot('facing interfacing', 'cloth', { isSeen: false })],
      pieces: smallCoat().pieces.map((each) => ({
        ...each,
        cutFrom: [...each.cutFrom, { slotId: 'facing interfacing', plyCount: 1 }],
      })),
    });
    const items = filled({
      shell: item('cloth', 'drill', { fibre: 'cotton', arealMassGPerM2: 240 }),
      'facing interfacing': item('cloth', 'muslin', { fibre: 'cotton', arealMassGPerM2: 40 }),
    });
    expect(says('flammability', coat, items)).toContain('ask for no test of its cloths');
  });
  it('a light nylon is outside the test by its fibre, a light cotton is not, an unknown cloth is unknown', () => {
    const exempt = (facts: object) => isFlammabilityExempt(item('cloth', 'cloth', facts));
    expect([
      exempt({ fibre: 'nylon', arealMassGPerM2: 54 }),
      exempt({ fibre: '90 % nylon, 10 % cotton', arealMassGPerM2: 54 }),
      exempt({ fibre: 'cotton', arealMassGPerM2: 89 }),
      exempt({ arealMassGPerM2: 54 }),
      exempt({}),
    ]).toEqual([true, false, true, null, null]);
  });
});
