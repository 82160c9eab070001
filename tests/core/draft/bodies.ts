/** Bodies and choices for drafting, plausible and lopsided. */
import fc from 'fast-check';
import type { Body, BodyKind } from '../../../shared-core/draft/body.ts';
import { type DraftInput, defaultDraft } from '../../../shared-core/draft/draft-input.ts';

export function body(kind: BodyKind, more: Partial<Body> = {}): Body {
  const girths = {
    women: { bustMm: 893, waistMm: 714, hipMm: 968, heightMm: 1672 },
    men: { bustMm: 987, waistMm: 861, hipMm: 1013, heightMm: 1791 },
    children: { bustMm: 607, waistMm: 566, hipMm: 639, heightMm: 1158 },
  }[kind];
  return {
    kind,
    ...girths,
    backLengthMm: null,
    shoulderMm: null,
    armMm: null,
    upperArmMm: null,
    wristMm: null,
    neckMm: null,
    ...more,
  };
}

export function coat(
  kind: BodyKind,
  more: Partial<DraftInput> = {},
  bodyMore: Partial<Body> = {},
): DraftInput {
  return { ...defaultDraft('plan-1', 'Harrow coat', '41', body(kind, bodyMore)), ...more };
}

const ranges = {
  women: { bust: [740, 1440], height: [1480, 1880] },
  men: { bust: [820, 1440], height: [1560, 2020] },
  children: { bust: [500, 860], height: [860, 1640] },
} as const;

/** A child's chest follows its height; a grown body's does not. */
function bodies(kind: BodyKind): fc.Arbitrary<Body> {
  const { bust, height } = ranges[kind];
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const maybe = (min: number, max: number) => fc.option(fc.double({ min: min, max: max, noNaN: true }));
  return fc
    .record({
      heightMm: fc.integer({ min: height[0], max: height[1] }),
      girth: share,
      waist: fc.double({ min: 0.74, max: 1.08, noNaN: true }),
      hip: maybe(0.94, 1.2),
      back: maybe(0.23, 0.265),
      shoulder: maybe(0.125, 0.15),
      arm: maybe(0.33, 0.38),
      upperArm: maybe(0.28, 0.36),
      wrist: maybe(0.16, 0.23),
      neck: maybe(0.37, 0.46),
    })
    .map((drawn) => {
      const bustMm =
        kind === 'children'
          ? 340 + drawn.heightMm * 0.23 + 90 * drawn.girth
          : bust[0] + (bust[1] - bust[0]) * drawn.girth;
      const ofBust = (ratio: number | null) => (ratio === null ? null : ratio * bustMm);
      const ofHeight = (ratio: number | null) => (ratio === null ? null : ratio * drawn.heightMm);
      return body(kind, {
        bustMm,
        heightMm: drawn.heightMm,
        waistMm: bustMm * drawn.waist,
        hipMm: ofBust(drawn.hip),
        backLengthMm: ofHeight(drawn.back),
        shoulderMm: ofBust(drawn.shoulder),
        armMm: ofHeight(drawn.arm),
        upperArmMm: ofBust(drawn.upperArm),
        wristMm: ofBust(drawn.wrist),
        neckMm: ofBust(drawn.neck),
      });
    });
}

/** A small child's coat cannot carry a grown man's room. */
const maxRoom = {
  women: { ease: 300, padding: 120 },
  men: { ease: 300, padding: 120 },
  children: { ease: 190, padding: 80 },
} as const;

/** Any plausible coat for any plausible body. */
export const coats: fc.Arbitrary<DraftInput> = fc
  .constantFrom<BodyKind>('women', 'men', 'children')
  .chain((kind) =>
    fc.record({
      body: bodies(kind),
      ease: fc.integer({ min: 90, max: maxRoom[kind].ease }),
      padding: fc.integer({ min: 0, max: maxRoom[kind].padding }),
      longer: fc.double({ min: -0.06, max: 0.22, noNaN: true }),
      lapMm: fc.constantFrom(0, 45, 80),
      neck: fc.constantFrom(
        { hasCollar: true, hood: 'none' } as const,
        { hasCollar: false, hood: 'two panels' } as const,
        { hasCollar: true, hood: 'two panels' } as const,
        { hasCollar: false, hood: 'three panels' } as const,
        { hasCollar: true, hood: 'three panels' } as const,
      ),
      sleeve: fc.constantFrom<DraftInput['sleeve']>('one part', 'two part'),
      strip: fc.constantFrom(0, 28, 54),
      pleatMm: fc.constantFrom(0, 24, 52),
      capEaseMm: fc.integer({ min: 0, max: 30 }),
    }),
  )
  .map(({ body: drawn, ease, padding, longer, strip, neck, ...choices }) => {
    const usual = defaultDraft('plan-1', 'Harrow coat', '41', drawn);
    return {
      ...usual,
      ...choices,
      ...neck,
      easeMm: ease,
      paddingGirthMm: { body: padding, sleeve: padding / 2 },
      sideStripMm: strip,
      coatLengthMm: usual.coatLengthMm + longer * drawn.heightMm,
    };
  });
