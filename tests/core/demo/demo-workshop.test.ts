import { describe, expect, it } from 'vitest';
import { fenwalkCoat } from '../../../shared-core/demo/coat.ts';
import { fenwalkMeasures } from '../../../shared-core/demo/coat-measures.ts';
import { demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import { ringAreaMm2, ringBox, ringPoints } from '../../../shared-core/geometry/ring.ts';
import { showTyped } from '../../../shared-core/measure/typed.ts';
import { cutRing, edgeLengthMm, seamRing } from '../../../shared-core/plan/geometry/outline-ring.ts';
import { planProblems } from '../../../shared-core/plan/validation/plan-problems.ts';
import { seamWalk } from '../../../shared-core/plan/geometry/seam-walk.ts';
import { factFields, factProblems, itemKinds, kindRecords } from '../../../shared-core/stash/kinds.ts';
import { onHandMilli } from '../../../shared-core/stash/stash.ts';
import { areaOutside, strip } from '../plan/clipper-referee.ts';

const demo = demoWorkshop();
const [coat] = demo.plans;
if (!coat) throw new Error('the demo has a coat');

describe('the demo workshop', () => {
  it('is the same each time', () => {
    expect(demoWorkshop()).toEqual(demo);
  });

  it('knows things of every kind, with facts that hold', () => {
    expect(new Set(demo.items.map((item) => item.kind))).toEqual(new Set(itemKinds));
    expect(demo.items.flatMap((item) => factProblems(item.kind, item.facts, item.name))).toEqual([]);
    expect(demo.items.length).toBeGreaterThanOrEqual(24);
  });

  it('shows its makers what they typed', () => {
    const shell = demo.items.find((item) => item.id === 'item-slatewater')!;
    expect(shell.typed.widthMm).toBe('58 in');
    expect(shell.facts).toMatchObject({ widthMm: 1473.2 });
    for (const item of demo.items) {
      const fields = new Map(factFields(item.kind));
      for (const [fact, text] of Object.entries(item.typed)) {
        const field = fields.get(fact);
        if (field?.kind !== 'quantity') throw new Error(`${fact} is no quantity`);
        const value = (item.facts as Readonly<Record<string, unknown>>)[fact] as number;
        expect(showTyped(field.quantity, value, text, { system: 'metric' })).toBe(text);
      }
    }
  });

  it('refers only to what is there, under ids of its own', () => {
    const ids = (things: readonly { readonly id: string }[]) => new Set(things.map((thing) => thing.id));
    for (const things of [demo.items, demo.lots, demo.lengths, demo.movements, demo.offers])
      expect(ids(things).size).toBe(things.length);
    for (const lot of demo.lots) expect(ids(demo.items)).toContain(lot.itemId);
    for (const length of demo.lengths) expect(ids(demo.lots)).toContain(length.lotId);
    for (const offer of demo.offers) expect(ids(demo.items)).toContain(offer.itemId);
    for (const slot of coat.slots) if (slot.itemId !== null) expect(ids(demo.items)).toContain(slot.itemId);
    for (const slot of coat.slots)
      expect(demo.items.find((item) => item.id === slot.itemId)?.kind).toBe(slot.kind);
  });

  it('has a ledger that adds up: received as bought, never below nothing, in the order of its dates', () => {
    for (const lot of demo.lots) {
      const rows = demo.movements.filter((row) => row.lotId === lot.id);
      expect(onHandMilli(rows.filter((row) => row.kind === 'received'))).toBe(lot.receivedMilli);
      const lengthIds = demo.lengths.filter((length) => length.lotId === lot.id).map((length) => length.id);
      const kind = demo.items.find((item) => item.id === lot.itemId)!.kind;
      expect(lengthIds.length > 0).toBe(kindRecords[kind].hasLengths);
      for (const lengthId of lengthIds.length > 0 ? lengthIds : [null]) {
        let left = 0;
        for (const row of rows.filter((candidate) => candidate.lengthId === lengthId)) {
          left += row.onHandMilli;
          expect(left).toBeGreaterThanOrEqual(0);
        }
      }
    }
    expect(demo.movements.map((row) => row.at)).toEqual(demo.movements.map((row) => row.at).toSorted());
  });

  it('has flaws that lie on their lengths', () => {
    for (const length of demo.lengths) {
      const leftMm = onHandMilli(demo.movements.filter((row) => row.lengthId === length.id)) / 1000;
      for (const flaw of length.flaws) {
        expect(flaw.x + flaw.widthX).toBeLessThanOrEqual(leftMm);
        expect(flaw.y + flaw.widthY).toBeLessThanOrEqual(length.widthMm);
      }
    }
    expect(
      demo.lengths.filter((length) => length.form === 'remnant' && length.flaws.length > 0).length,
    ).toBeGreaterThan(1);
  });

  it('can buy all that its coat needs, some of it from two suppliers', () => {
    const suppliers = (itemId: string | null) =>
      new Set(demo.offers.filter((offer) => offer.itemId === itemId).map((offer) => offer.supplier)).size;
    for (const slot of coat.slots) expect(suppliers(slot.itemId)).toBeGreaterThan(0);
    expect(coat.slots.filter((slot) => suppliers(slot.itemId) > 1).length).toBeGreaterThan(3);
  });
});

describe('the demo coat', () => {
  it('has nothing wrong with it', () => {
    expect(planProblems(coat)).toEqual([]);
  });

  it('fits in every seam, with its caps eased and its lining pleated as drafted', () => {
    const reports = seamWalk(coat);
    expect(reports.filter((report) => !report.fits || report.sides === 'none')).toEqual([]);
    const easeMm = (seamId: string) => reports.find((report) => report.seamId === seamId)!.differenceMm;
    expect(easeMm('armhole')).toBeCloseTo(2 * fenwalkMeasures.capEaseMm, 1);
    expect(easeMm('lining armhole')).toBeCloseTo(2 * fenwalkMeasures.capEaseMm, 1);
    expect(easeMm('lining neck')).toBeCloseTo(2 * fenwalkMeasures.pleatMm, 1);
    const others = reports.filter(
      (report) => !['armhole', 'lining armhole', 'lining neck'].includes(report.seamId),
    );
    for (const report of others) expect(Math.abs(report.differenceMm)).toBeLessThan(0.05);
  });

  it('gives the bust the ease that was chosen, all round', () => {
    const quarters = ['back', 'front'].map((id) => {
      const { outline } = coat.pieces.find((piece) => piece.id === id)!;
      const armhole = outline.edges.find((edge) => edge.name === 'armhole')!;
      return armhole.segments.at(-1)!.to.y;
    });
    expect(2 * (quarters[0]! + quarters[1]!)).toBeCloseTo(940 + 232, 6);
  });

  it('joins front and back at the shoulder without a corner in neckline or armhole', () => {
    for (const id of ['back', 'front']) {
      const { outline } = coat.pieces.find((piece) => piece.id === id)!;
      const [neckline, shoulder, armhole] = ['neckline', 'shoulder', 'armhole'].map(
        (name) => outline.edges.find((edge) => edge.name === name)!.segments[0]!,
      );
      if (neckline?.kind !== 'cubic' || armhole?.kind !== 'cubic' || !shoulder)
        throw new Error('neckline and armhole are curves');
      const along = { x: shoulder.to.x - neckline.to.x, y: shoulder.to.y - neckline.to.y };
      const square = (dx: number, dy: number) =>
        Math.abs((along.x * dx + along.y * dy) / (131 * Math.hypot(dx, dy)));
      expect(square(neckline.to.x - neckline.control2.x, neckline.to.y - neckline.control2.y)).toBeLessThan(
        1e-9,
      );
      expect(square(armhole.control1.x - shoulder.to.x, armhole.control1.y - shoulder.to.y)).toBeLessThan(
        1e-9,
      );
    }
  });

  it('has pieces that all fit the width of their cloth', () => {
    for (const piece of coat.pieces) {
      const box = ringBox(cutRing(piece.outline, piece.foldEdge));
      for (const { slotId } of piece.cutFrom) {
        const item = demo.items.find(
          (candidate) => candidate.id === coat.slots.find((slot) => slot.id === slotId)?.itemId,
        );
        if (item?.kind !== 'cloth' && item?.kind !== 'batting')
          throw new Error(`${slotId} is cut from nothing`);
        const selvageMm = item.kind === 'cloth' ? (item.facts.selvageMm ?? 0) : 0;
        expect((box.maxY - box.minY) * 1.05).toBeLessThan(item.facts.widthMm! - 2 * selvageMm);
      }
    }
  });

  it('has cut lines that hold every seam line with the allowance beside each chord', () => {
    for (const piece of coat.pieces) {
      const cut = cutRing(piece.outline, piece.foldEdge);
      const seam = seamRing(piece.outline);
      expect(areaOutside(seam, cut)).toBeLessThan(1);
      const points = ringPoints(seam);
      // 16 mm everywhere but on folds; the deeper hems are more.
      points.forEach((from, index) => {
        const to = points[(index + 1) % points.length]!;
        const isFold = piece.foldEdge !== null && index === 0;
        if (!isFold) expect(areaOutside(strip(from, to, 16), cut)).toBeLessThan(2);
      });
    }
  });

  it('has folds that lie along the grain', () => {
    const folded = coat.pieces.filter((piece) => piece.foldEdge !== null);
    expect(folded.map((piece) => piece.id)).toContain('back-lining');
    for (const { outline, foldEdge } of folded) {
      expect(outline.edges[0]!.name).toBe(foldEdge);
      expect(outline.edges[0]!.segments.map((segment) => segment.to.y)).toEqual([outline.start.y]);
    }
  });

  it('opened from its fold has twice the area of its half', () => {
    for (const piece of coat.pieces.filter((candidate) => candidate.foldEdge !== null)) {
      const bare = {
        ...piece.outline,
        edges: piece.outline.edges.map((edge) => ({ ...edge, allowanceMm: 0 })),
      };
      expect(ringAreaMm2(cutRing(bare, piece.foldEdge))).toBeCloseTo(
        2 * ringAreaMm2(seamRing(piece.outline)),
        0,
      );
    }
  });

  it('takes 2.6 to 4.2 m of its shell for one coat, if a lay uses 80 to 87 % of the cloth', () => {
    const shellMm2 = coat.pieces
      .filter((piece) => piece.cutFrom.some((from) => from.slotId === 'shell'))
      .reduce((sum, piece) => sum + piece.cutCount * ringAreaMm2(cutRing(piece.outline, piece.foldEdge)), 0);
    expect(shellMm2 / 1450 / 0.8).toBeLessThan(4200);
    expect(shellMm2 / 1450 / 0.86).toBeGreaterThan(2580);
  });

  it('drafted to another body still fits in every seam', () => {
    const larger = {
      ...fenwalkMeasures,
      bustMm: 1080,
      napeToHemMm: 1120,
      shoulderMm: 138,
      topSleeveMm: 290,
      scyeDepthMm: 266,
      capEaseMm: 22,
    };
    const plan = fenwalkCoat({}, larger);
    expect(planProblems(plan)).toEqual([]);
    expect(seamWalk(plan).filter((report) => !report.fits)).toEqual([]);
    expect(edgeLengthMm(plan.pieces[0]!.outline, 'side')).toBeGreaterThan(
      edgeLengthMm(coat.pieces[0]!.outline, 'side'),
    );
  });
});
