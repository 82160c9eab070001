import { describe, expect, it } from 'vitest';
import { battingAdvice } from '../../../../shared-core/requirement/fill/batting-advice.ts';
import { lineLimit, needsBacking } from '../../../../shared-core/requirement/fill/batting-limits.ts';
import { adviceText } from '../../../../shared-core/requirement/sewing-advice.ts';
import { emptyFacts, type FactsOf } from '../../../../shared-core/stash/kinds.ts';
import { item, piece, rectangle } from '../../../fixtures/small-workshop.ts';
import { filled, nothingChosen, quiltedCoat } from '../small-coat.ts';

const facts = (more: Partial<FactsOf<'batting'>>) => ({ ...emptyFacts('batting'), ...more });
const said = (coat: ReturnType<typeof quiltedCoat>, more: Partial<FactsOf<'batting'>>) =>
  battingAdvice(coat, filled({ batting: item('batting', 'Fleece', more) })).map((each) =>
    adviceText(each, 'metric'),
  );

describe('how far apart a batting may be quilted', () => {
  it.each<[string, Partial<FactsOf<'batting'>>, number | undefined]>([
    ['wool', { fibre: '100 % wool' }, 3],
    ['merino with some polyester', { fibre: '80 % merino, 20 % polyester' }, 3],
    ['polyester of high loft', { fibre: 'polyester', loftMm: 12 }, 3],
    ['plain cotton', { fibre: '100 % cotton' }, 2],
    ['needled cotton', { fibre: '100 % cotton', heldBy: 'needling' }, 8],
    ['cotton on a scrim', { fibre: '100 % cotton', heldBy: 'scrim' }, 8],
    ['bonded polyester', { fibre: 'polyester', loftMm: 12, heldBy: 'bonding' }, 4],
    ['a batting of which nothing is known', {}, undefined],
  ])('%s', (_, more, inches) => {
    const limit = lineLimit(facts(more));
    expect(limit && Number((limit.limitMm / 25.4).toFixed(9))).toBe(inches ?? null);
    if (limit) expect(limit.basis.kind).toBe('rule of thumb');
  });
  it('its packet wins over what is usual', () => {
    const limit = lineLimit(facts({ fibre: '100 % wool', lineLimitMm: 180 }));
    expect([limit?.limitMm, limit?.basis.kind]).toEqual([180, 'measured']);
  });
});

describe('advice on the batting of a plan', () => {
  it('lines 100 mm apart are too far for wool', () => {
    expect(said(quiltedCoat(), { fibre: '100 % wool' })).toEqual([
      'Fleece holds between lines at most 76.2 mm apart, and those of back and front are up to 100 mm: it shifts and lumps in the wash. Bring the lines nearer, or take a batting that is needled or bonded.',
    ]);
    expect(said(quiltedCoat(), { lineLimitMm: 100 })).toEqual([]);
    expect(said(quiltedCoat(), { fibre: '100 % cotton', heldBy: 'needling' })).toEqual([]);
  });
  it('lines of its own bring one piece within the limit', () => {
    const [back, front] = quiltedCoat().pieces;
    const coat = quiltedCoat({ pieces: [{ ...back!, quiltingSpacingMm: 70 }, front!] });
    expect(said(coat, { fibre: '100 % wool' })[0]).toContain('those of front are up to 100 mm');
  });
  it('a piece with batting and no lines may be no wider than the batting holds over', () => {
    const cutFrom = [
      { slotId: 'shell', plyCount: 1 },
      { slotId: 'batting', plyCount: 1 },
    ];
    const hood = piece('hood', rectangle(340, 230), { cutFrom });
    const strip = piece('collar', rectangle(500, 70), { cutFrom });
    const coat = quiltedCoat({ pieces: [hood, strip] });
    expect(said(coat, { fibre: '100 % wool' })).toEqual([
      'hood has Fleece and no lines, and is wider than the 76.2 mm that it holds over. Quilt it, tack the batting to the seam allowances all round, or take a batting that is needled or bonded.',
    ]);
    expect(said({ ...coat, quilting: null }, { lineLimitMm: 230 })).toEqual([]);
  });
  it('loose fibres on a single cloth want a backing', () => {
    const bare = said(quiltedCoat(), { lineLimitMm: 100, heldBy: 'nothing' });
    expect(bare).toEqual([
      'Fleece lies bare behind back and front: without a cloth behind it, it drags over the machine and its fibres come out. Cut a backing too and quilt all three together, or take a bonded batting.',
    ]);
    expect(said(quiltedCoat(), { lineLimitMm: 100, needsBacking: true })).toEqual(bare);
    expect(said(quiltedCoat(), { lineLimitMm: 100, heldBy: 'nothing', needsBacking: false })).toEqual([]);
    const backed = quiltedCoat().pieces.map((each) => ({
      ...each,
      cutFrom: [
        { slotId: 'shell', plyCount: 2 },
        { slotId: 'batting', plyCount: 1 },
      ],
    }));
    expect(said(quiltedCoat({ pieces: backed }), { lineLimitMm: 100, heldBy: 'nothing' })).toEqual([]);
  });
  it('says nothing while no batting is chosen, and of one of which nothing is known', () => {
    expect(battingAdvice(quiltedCoat(), nothingChosen)).toEqual([]);
    expect(said(quiltedCoat(), {})).toEqual([]);
    expect(needsBacking(facts({}))).toBe(false);
  });
});
