import { describe, expect, test } from 'vitest';
import { estimate, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import type { ProposedSlot } from '../../../shared-core/cover/cutting-proposal.ts';
import { cuttingSheet, laysToCut, proposedSheet } from '../../../shared-core/flow/output/lay-sheets.ts';
import { ringBox } from '../../../shared-core/geometry/ring.ts';
import { placedRing } from '../../../shared-core/lay/lay-svg.ts';
import { cuttingPdf } from '../../../shared-core/paper/cutting-pdf.ts';
import {
  type CuttingPart,
  drawingScale,
  overlapMm,
  rulerMarks,
  stretchesOf,
} from '../../../shared-core/paper/cutting-sheet.ts';
import { solveHere } from '../../../main/services/threads/solver.ts';
import type { FactsOf } from '../../../shared-core/stash/kinds.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { ShapesNeed } from '../../../shared-core/requirement/need.ts';
import {
  clothLot,
  item,
  layHere,
  measured,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../fixtures/small-workshop.ts';
import { coat as panelCoat, panel, sources as panelSources } from '../flow/panel-coat.ts';
import { mmPerPt, type PdfPath, type PdfSheet, pdfSheets } from './pdf-text.ts';
import { typefaceFiles } from './typeface.ts';

const taffeta = { ...item('cloth', 'shell item', { widthMm: 1200, selvageMm: 15 }), name: 'Тафта «Иней»' };
const coat: CoatPlan = plan({
  name: 'Пальто',
  slots: [slot('shell', 'cloth', { isQuilted: true }), slot('thread', 'thread')],
  quilting: {
    spacingMm: 100,
    stitch: '301',
    stitchLengthMm: 3,
    threadSlotId: 'thread',
    order: { kind: 'rough', marginMm: 20 },
    ...measured(4, 0),
  },
  pieces: [
    piece('Спинка', rectangle(900, 430), { foldEdge: 'side', quilted: 'across' }),
    piece('Карман', rectangle(240, 200), { cutCount: 4, isMirrored: true }),
  ],
});

async function sheetOf(
  of: CoatPlan,
  lengthsMm: readonly number[],
  system: 'metric' | 'imperial' = 'metric',
  facts: Partial<FactsOf<'cloth'>> = {},
) {
  const cloth = { ...taffeta, facts: { ...taffeta.facts, ...facts } } as typeof taffeta;
  const lot = clothLot('shell item', 'lot', 1200, lengthsMm, 9000, { dyeLot: 'Ж-7' });
  const [first, ...others] = lot.lengths;
  const flawed = { ...first!, flaws: [{ x: 300, y: 0, widthX: 60, widthY: 40 }] };
  const shelf = [onShelf(cloth, { ...lot, lengths: [flawed, ...others] })];
  const sources: FlowSources = { plan: of, shelf, offers: [], suppliers: [] };
  const found = await estimate(sources, layHere, solveHere);
  const lays = laysToCut(found);
  const needs = found.requirement;
  return { lays, needs, sources, sheet: cuttingSheet({ plan: of, needs, lays, shelf }, system) };
}

async function pagesOf(sheet: Parameters<typeof cuttingPdf>[0], format: 'A4' | 'letter' = 'A4') {
  const { bytes, missingLetters } = await cuttingPdf(sheet, { format, day: '29 Nov 2026' }, typefaceFiles);
  expect(missingLetters).toEqual([]);
  return pdfSheets(bytes);
}

const wordsOn = (page: PdfSheet | undefined) => page!.texts.map(({ text }) => text);
const scaleOf = (page: PdfSheet | undefined) =>
  Number(/^1 : (\d+)/.exec(wordsOn(page).find((text) => text.startsWith('1 : '))!)![1]);
const across = ({ points }: PdfPath) => {
  const xs = points.map(({ x }) => x);
  return Math.max(...xs) - Math.min(...xs);
};
const up = ({ points }: PdfPath) => {
  const ys = points.map(({ y }) => y);
  return Math.max(...ys) - Math.min(...ys);
};

describe('the cutting sheet', () => {
  test('names the length, its dye lot, width and what is used of it', async () => {
    const { sheet, lays } = await sheetOf(coat, [6000]);
    const [page] = await pagesOf(sheet);
    const used = (lays[0]!.result.usedLengthMm[0]! / 1000).toFixed(2);
    expect(wordsOn(page)).toContain('Shell: Тафта «Иней»');
    expect(wordsOn(page)).toContain(
      `Roll, dye lot Ж-7. 120 cm wide, 117 cm between the selvages. ${used} m of 6.00 m used.`,
    );
    expect(wordsOn(page)).toContain('Пальто, size 40: cutting sheet');
    expect(wordsOn(page)).toContain('flaw');
    expect([page!.width, page!.height].map(Math.round)).toEqual([842, 595]);
  });

  test('draws the cloth, the ruler and each piece to the scale that it states', async () => {
    const { sheet, lays } = await sheetOf(coat, [6000]);
    const [page] = await pagesOf(sheet);
    const scale = scaleOf(page);
    const usedMm = lays[0]!.result.usedLengthMm[0]!;
    const cloth = page!.paths.find(
      (each) => Math.abs(across(each) * scale - usedMm) < 0.5 && Math.abs(up(each) * scale - 1200) < 0.5,
    );
    expect(cloth).toBeDefined();
    const at = (label: string) => {
      const { x, width } = page!.texts.find(({ text, y }) => text === label && y * mmPerPt > 100)!;
      return (x + width / 2) * mmPerPt;
    };
    expect((at('60') - at('20')) * scale).toBeCloseTo(400, 0);
    const { job, result } = lays[0]!;
    for (const placement of result.placements) {
      const box = ringBox(placedRing(job, placement));
      const drawn = page!.paths.some(
        (each) =>
          Math.abs(across(each) * scale - (box.maxX - box.minX)) < 0.6 &&
          Math.abs(up(each) * scale - (box.maxY - box.minY)) < 0.6,
      );
      expect(drawn).toBe(true);
    }
    // The kept outline of the rough-cut back and its fold.
    expect(page!.paths.filter(({ isDashed }) => isDashed)).toHaveLength(2);
  });

  test('says where each piece lies, from the start and from the cloth’s own edge', async () => {
    const { sheet, lays } = await sheetOf(coat, [6000]);
    const words = (await pagesOf(sheet)).flatMap(wordsOn);
    const { job, result } = lays[0]!;
    for (const placement of result.placements) {
      const box = ringBox(placedRing(job, placement));
      expect(words).toContain(`${(box.minX / 10).toFixed(1)} cm`);
      expect(words).toContain(`${((box.minY + 15) / 10).toFixed(1)} cm`);
      expect(words).toContain(`${placement.turnDeg}°${placement.mirrored ? ', mirrored' : ''}`);
    }
    expect(words).toContain('4 of 4');
    expect(words).toContain('Cut with 20 mm to spare all round, quilted, and recut to the outline');
    expect(words).toContain('Not quilted');
  });

  test('of cloth that is washed first has the measures of washed cloth, and says what is taken of the shelf', async () => {
    const shrinking = { shrinkageAlongRatio: 0.1, shrinkageAcrossRatio: 0.05 };
    const { sheet, lays } = await sheetOf(coat, [6000], 'metric', shrinking);
    const [lay] = lays;
    const taken = (lay!.result.usedLengthMm[0]! / 0.9 / 1000).toFixed(2);
    const [part] = sheet.parts;
    expect(part!.selvageMm).toBeCloseTo(15 * 0.95, 9);
    expect(part!.widthMm + 2 * part!.selvageMm).toBeCloseTo(1200 * 0.95, 6);
    expect(part!.facts).toContain(
      `Wash it first: all measures are those of washed cloth, and ${taken} m as it lies on the shelf is used.`,
    );
    expect(part!.facts).toContain('114 cm wide');
    expect(part!.facts).toContain('of 5.40 m used');
  });

  test('of a cutting says just as well what is washed first', async () => {
    const shrinking = { shrinkageAlongRatio: 0.1, shrinkageAcrossRatio: 0.05 };
    const { sheet, lays, sources, needs } = await sheetOf(coat, [6000], 'metric', shrinking);
    const slots = lays.map((lay) => {
      const need = needs.find(
        (each): each is ShapesNeed => each.slotId === lay.slotId && each.kind === 'shapes',
      )!;
      return { laid: { need, lay } } as ProposedSlot;
    });
    const proposed = proposedSheet(sources, slots, 'metric');
    expect(proposed.parts.map(({ facts }) => facts)).toEqual(sheet.parts.map(({ facts }) => facts));
    expect(proposed.parts[0]!.facts).toContain('Wash it first');
  });

  test('goes over pages where a length is long, and names what two of them share', async () => {
    const { sheet, lays } = await sheetOf({ ...coat, coatCount: 14 }, [20_000]);
    const pages = await pagesOf(sheet);
    const stretches = pages.filter((page) => wordsOn(page).some((text) => text.startsWith('1 : ')));
    expect(stretches.length).toBeGreaterThan(1);
    expect(wordsOn(stretches[0])).toContain(
      `Stretch 1 of ${stretches.length} of this length. Its last 10 cm (4 in) are also on the next page.`,
    );
    const scale = scaleOf(stretches[0]);
    expect(scale).toBeLessThanOrEqual(20);
    const usedMm = lays[0]!.result.usedLengthMm[0]!;
    const drawnMm = stretches.map((page) => {
      const cloths = page.paths.filter((each) => Math.abs(up(each) * scale - 1200) < 0.5).map(across);
      return Math.max(...cloths) * scale;
    });
    const sum = drawnMm.reduce((total, mm) => total + mm, 0);
    expect(sum - (stretches.length - 1) * overlapMm).toBeCloseTo(usedMm, 0);
    // Nothing is drawn off the paper.
    for (const { texts, width } of pages)
      for (const { x, width: wide } of texts) expect(x + wide).toBeLessThan(width - 20);
  });

  test('has a part for each length, and measures in inches on Letter where the workshop does', async () => {
    const [back, pocket] = coat.pieces;
    const many = { ...coat, pieces: [back!, { ...pocket!, cutCount: 16 }] };
    const { sheet } = await sheetOf(many, [1100, 1000], 'imperial');
    expect(sheet.parts.map(({ facts }) => facts.split('.')[0])).toEqual([
      'Roll, dye lot Ж-7',
      'Roll, dye lot Ж-7',
    ]);
    const pages = await pagesOf(sheet, 'letter');
    expect([pages[0]!.width, pages[0]!.height]).toEqual([792, 612]);
    expect(wordsOn(pages[0]).join(' ')).toContain('Numbers at the edges in inches');
    const at = (label: string) => {
      const { x, width } = pages[0]!.texts.find(({ text, y }) => text === label && y * mmPerPt > 80)!;
      return (x + width / 2) * mmPerPt;
    };
    expect((at('16') - at('8')) * scaleOf(pages[0])).toBeCloseTo(8 * 25.4, 0);
  });
});

describe('how a lay comes onto pages', () => {
  const room = { widthMm: 250, heightMm: 135 };
  test('at the largest scale of those that need the fewest pages, and never so small that it cannot be read', () => {
    expect(drawingScale({ widthMm: 1200, lengthMm: 1500 }, room)).toBe(10);
    expect(drawingScale({ widthMm: 1500, lengthMm: 1500 }, room)).toBe(12);
    expect(drawingScale({ widthMm: 1200, lengthMm: 3600 }, room)).toBe(15);
    expect(drawingScale({ widthMm: 1200, lengthMm: 30_000 }, room)).toBe(20);
    // Wider than any good scale has room for.
    expect(drawingScale({ widthMm: 3000, lengthMm: 2000 }, room)).toBe(25);
  });

  test('in stretches that leave nothing out and share what they say', () => {
    for (const lengthMm of [400, 2499, 2500, 2501, 7000, 12_580]) {
      const stretches = stretchesOf(lengthMm, 2500);
      expect(stretches[0]!.fromMm).toBe(0);
      expect(stretches.at(-1)!.toMm).toBe(lengthMm);
      for (const { fromMm, toMm } of stretches) expect(toMm - fromMm).toBeLessThanOrEqual(2500 + 1e-6);
      stretches.slice(1).forEach((stretch, index) => {
        expect(stretches[index]!.toMm - stretch.fromMm).toBeCloseTo(overlapMm, 6);
      });
    }
  });

  test('with a mark each 10 cm or 4 in, and numbers only as close as they have room', () => {
    const cm = rulerMarks({ fromMm: 250, toMm: 620 }, 'metric', 90);
    expect(cm.map(({ atMm, label }) => [atMm, label])).toEqual([
      [300, '30'],
      [400, '40'],
      [500, '50'],
      [600, '60'],
    ]);
    const inches = rulerMarks({ fromMm: 0, toMm: 914.4 }, 'imperial', 150);
    expect(inches).toHaveLength(10);
    expect(inches.filter(({ hasLabel }) => hasLabel).map(({ label }) => label)).toEqual([
      '0',
      '12',
      '24',
      '36',
    ]);
    expect(inches.at(-1)).toMatchObject({ isWhole: true });
  });

  test('folded cloth has its fold at the lower edge and one selvage', async () => {
    const { sheet } = await sheetOf(coat, [6000]);
    const folded: CuttingPart = { ...sheet.parts[0]!, isFolded: true, widthMm: 585 };
    const [page] = await pagesOf({ ...sheet, parts: [folded] });
    expect(wordsOn(page).join(' ')).toContain('from the lower fold');
    const scale = scaleOf(page);
    expect(page!.paths.some((each) => Math.abs(up(each) * scale - 600) < 0.5)).toBe(true);
  });
});

test('a panel is cut whole: the sheet says which pieces it gives once it is quilted', async () => {
  const of = panelSources(panelCoat(panel));
  const found = await estimate(of, layHere, solveHere);
  const sheet = cuttingSheet(
    { plan: of.plan, needs: found.requirement, lays: laysToCut(found), shelf: of.shelf },
    'metric',
  );
  const words = (await pagesOf(sheet)).flatMap(wordsOn);
  expect(words).toContain('Quilted as a panel, then cut into 2 x front');
  expect(words).toContain('3 of 3');
});
