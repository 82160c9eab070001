/**
 * The body that a coat is drafted for. What is not measured follows from bust and height by the proportions of
 * published drafts; a measure that the maker took always goes before its proportion.
 */
export type BodyKind = 'women' | 'men' | 'children';

/** Bust, waist and height are needed; null elsewhere: by proportion. All in mm. */
export interface Body {
  readonly kind: BodyKind;
  /** Bust or chest, all round. */
  readonly bustMm: number;
  readonly waistMm: number;
  readonly hipMm: number | null;
  readonly heightMm: number;
  /** Nape to waist, down the back. */
  readonly backLengthMm: number | null;
  /** From the neck to the end of the shoulder bone. */
  readonly shoulderMm: number | null;
  /** From the end of the shoulder to the wrist, the arm a little bent. */
  readonly armMm: number | null;
  readonly upperArmMm: number | null;
  readonly wristMm: number | null;
  readonly neckMm: number | null;
}

/** Every measure that the draft reads, and the three parts of half the bust. */
export interface WholeBody
  extends Omit<
    Body,
    'hipMm' | 'backLengthMm' | 'armMm' | 'upperArmMm' | 'wristMm' | 'shoulderMm' | 'neckMm'
  > {
  readonly hipMm: number;
  readonly backLengthMm: number;
  readonly armMm: number;
  readonly upperArmMm: number;
  readonly wristMm: number;
  readonly shoulderMm: number | null;
  /** Nape down to the line of the underarm. */
  readonly scyeDepthMm: number;
  /** Half of the back at the shoulder blades, the width of the arm, half of the chest: together half of the bust. */
  readonly backWidthMm: number;
  readonly armWidthMm: number;
  readonly chestWidthMm: number;
  readonly neckWidthMm: number;
  /** Waist to the fullest part of the hip. */
  readonly hipDepthMm: number;
}

/**
 * The body with its proportions filled in.
 *
 * Women: scye depth 1/10 bust + 10.5 cm, back 1/8 bust + 5.5, arm 1/8 bust - 1.5, chest 1/4 bust - 4 (cm), which add up
 * to half the bust: direct draft of the trade school M. Müller & Sohn, from memory.
 * Men: scye depth 1/8 chest + 1/4 back length + 0.5 cm, back length 1/4 height + 1, back 1/5 chest and beyond a chest
 * of 100 a tenth of what is over: proportionate draft for height 176 and chest 96 printed by a tailors' forum.
 * Children: scye depth 1/20 height + 1/10 chest + 3.9 cm, back 1/5 chest + 0.6: common practice, no source.
 * Hip, arm, upper arm, wrist and hip depth: common practice, no source.
 */
export function wholeBody(body: Body): WholeBody {
  const { bustMm, heightMm } = body;
  const backLengthMm = body.backLengthMm ?? defaultBackLengthMm(body);
  const widths = widthsOf(body);
  const share = {
    women: { arm: 0.355, upperArm: 0.315, wrist: 0.18 },
    men: { arm: 0.36, upperArm: 0.32, wrist: 0.18 },
    children: { arm: 0.36, upperArm: 0.31, wrist: 0.22 },
  }[body.kind];
  return {
    ...body,
    hipMm: body.hipMm ?? defaultHipMm(body),
    backLengthMm,
    ...widths,
    scyeDepthMm: scyeDepthMm(body, backLengthMm),
    chestWidthMm: bustMm / 2 - widths.backWidthMm - widths.armWidthMm,
    neckWidthMm: neckWidthMm(body),
    armMm: body.armMm ?? share.arm * heightMm,
    upperArmMm: body.upperArmMm ?? share.upperArm * bustMm,
    wristMm: body.wristMm ?? share.wrist * bustMm,
    hipDepthMm: 0.12 * heightMm,
  };
}

function defaultHipMm({ kind, bustMm }: Body): number {
  switch (kind) {
    case 'women':
      return bustMm + 65;
    case 'men':
      return 0.97 * bustMm + 70;
    case 'children':
      return bustMm + 35;
    default:
      return kind satisfies never;
  }
}

function defaultBackLengthMm({ kind, heightMm }: Body): number {
  switch (kind) {
    case 'women':
      return heightMm / 4 - 5;
    case 'men':
      return heightMm / 4 + 10;
    case 'children':
      return heightMm / 4 - 5;
    default:
      return kind satisfies never;
  }
}

function scyeDepthMm({ kind, bustMm, heightMm }: Body, backLengthMm: number): number {
  switch (kind) {
    case 'women':
      return bustMm / 10 + 105;
    case 'men':
      return bustMm / 8 + backLengthMm / 4 + 5;
    case 'children':
      return heightMm / 20 + bustMm / 10 + 39;
    default:
      return kind satisfies never;
  }
}

function widthsOf({ kind, bustMm }: Body): Pick<WholeBody, 'backWidthMm' | 'armWidthMm'> {
  switch (kind) {
    case 'women':
      return { backWidthMm: bustMm / 8 + 55, armWidthMm: bustMm / 8 - 15 };
    case 'men': {
      const overMm = Math.max(0, bustMm - 1000);
      return { backWidthMm: (bustMm - overMm) / 5 + 0.1 * overMm + 5, armWidthMm: bustMm / 8 - 5 };
    }
    case 'children':
      return { backWidthMm: bustMm / 5 + 6, armWidthMm: bustMm / 8 - 5 };
    default:
      return kind satisfies never;
  }
}

/** A sixth of the neck where it was measured; else a twentieth of the bust and 2 cm, 3 for men and children. */
function neckWidthMm({ kind, bustMm, neckMm }: Body): number {
  if (neckMm !== null) return neckMm / 6 + 4;
  return bustMm / 20 + (kind === 'women' ? 20 : 30);
}
