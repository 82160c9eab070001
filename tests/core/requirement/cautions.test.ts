import { describe, expect, it } from 'vitest';
import { cautions, isFlammabilityExempt, isForChild } from '../../../shared-core/requirement/cautions.ts';
import { item, slot } from '../../fixtures/small-workshop.ts';
import { filled, nothingChosen, quiltedCoat, smallCoat, stuffedCoat } from './small-coat.ts';

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
      'drawstrings',
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
    expect(says('drawstrings', smallCoat({ ...withCord, size: '4T' }), nothingChosen)).toMatch(
      /^This coat is for a child/,
    );
    expect(says('drawstrings', smallCoat({ ...withCord, size: '40' }), nothingChosen)).toMatch(
      /^If it is for a child/,
    );
  });
  it('knows a child’s size by its name', () => {
    expect(isForChild(smallCoat({ size: '4T', isForChild: false }))).toBe(false);
    expect(isForChild(smallCoat({ size: '44', isForChild: true }))).toBe(true);
    const sized = (size: string) => isForChild(smallCoat({ size }));
    expect(['2T', 'age 6', 'kids 8', '40', 'M tall', 'UK 14'].map(sized)).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
  });
  it('names the cloth that may have to be tested for burning', () => {
    const light = filled({ shell: item('cloth', 'voile', { fibre: 'cotton', arealMassGPerM2: 60 }) });
    expect(says('flammability', smallCoat(), light)).toContain('may ask for a test of: shell');
    const heavy = filled({ shell: item('cloth', 'drill', { fibre: 'cotton', arealMassGPerM2: 240 }) });
    expect(says('flammability', smallCoat(), heavy)).toContain('do not ask to be tested');
    const brushed = filled({
      shell: item('cloth', 'drill', { fibre: 'cotton', arealMassGPerM2: 240, finish: 'brushed' }),
    });
    expect(says('flammability', smallCoat(), brushed)).toContain('may ask for a test of: shell');
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
