/** All pieces of a drafted coat: how each is cut, from which slots, and the notches that bring them together. */
import type { CutFrom, Notch, Piece } from '../plan/model/coat-plan.ts';
import type { Outline } from '../plan/model/outline.ts';
import { edgeLengthMm } from '../plan/geometry/outline-ring.ts';
import {
  backLiningOutline,
  backNeckFacingOutline,
  backOutline,
  frontFacingOutline,
  frontLiningOutline,
  frontOutline,
  sideStripOutline,
} from './body-pieces.ts';
import type { Block } from './block.ts';
import type { DraftInput } from './draft-input.ts';
import { backHalf } from './halves.ts';
import { collarOutline, hoodCentreOutline, hoodSideOutline } from './neck-pieces.ts';
import { pathLengthMm } from './pen.ts';
import { type Armhole, cuffOutline, sleeveOutline } from './sleeve.ts';
import { onFold, pair, piece } from './written-piece.ts';
import {
  frontStayOutline,
  loopOutline,
  placketOutline,
  pocketBagOutline,
  pocketMouthMm,
  weltOutline,
} from './small-pieces.ts';

const shell: CutFrom = { slotId: 'shell', plyCount: 1 };
const bodyLining: CutFrom = { slotId: 'body-lining', plyCount: 1 };
const pocketing: CutFrom = { slotId: 'pocketing', plyCount: 1 };

/** Shell that holds its shape: faced with interfacing where the maker wants it. */
function stiffened(input: DraftInput): CutFrom[] {
  return input.hasInterfacing ? [shell, { slotId: 'interfacing', plyCount: 1 }] : [shell];
}

function batting(plyCount: number): CutFrom[] {
  return plyCount > 0 ? [{ slotId: 'batting', plyCount }] : [];
}

/** In the order in which a maker cuts them. */
export function draftPieces(input: DraftInput, armhole: Armhole): Piece[] {
  return [
    ...bodyPieces(input, armhole.block),
    ...sleevePieces(input, armhole),
    ...collarPieces(input, armhole.block),
    ...hoodPieces(input, armhole.block),
    ...smallPieces(input, armhole.block),
  ];
}

function bodyPieces(input: DraftInput, block: Block): Piece[] {
  const padded = [shell, ...batting(input.battingPlies.body)];
  const hasStrip = block.stripMm > 0;
  const side = sideNotch(block);
  return [
    piece('back', 'Back', backOutline(block), padded, {
      ...onFold,
      quilted: 'across',
      notches: [pitchNotch(backOutline(block), 2), ...side],
    }),
    piece('front', 'Front', frontOutline(block), padded, {
      ...pair,
      quilted: 'across',
      notches: [pitchNotch(frontOutline(block), 1), ...side, ...pocketNotches(block)],
    }),
    ...(hasStrip
      ? [
          piece('side-strip', 'Side strip', sideStripOutline(block, ''), padded, {
            cutCount: 2,
            quilted: 'across',
          }),
        ]
      : []),
    piece('front-facing', 'Front facing', frontFacingOutline(block), stiffened(input), pair),
    piece('back-neck-facing', 'Back neck facing', backNeckFacingOutline(block), stiffened(input), onFold),
    piece('front-lining', 'Front lining', frontLiningOutline(block), [bodyLining], {
      ...pair,
      notches: side,
    }),
    piece('back-lining', 'Back lining', backLiningOutline(block), [bodyLining], {
      ...onFold,
      notches: [...side, ...(block.halfPleatMm > 0 ? [{ edge: 'neckline', atMm: block.halfPleatMm }] : [])],
    }),
    ...(hasStrip
      ? [
          piece('side-strip-lining', 'Side strip lining', sideStripOutline(block, 'lining '), [bodyLining], {
            cutCount: 2,
          }),
        ]
      : []),
  ];
}

/** Where the armhole runs straight down: `segmentCount` of its curves counted from the underarm, one notch in front. */
function pitchNotch(outline: Outline, part: 1 | 2): Notch {
  const armhole = outline.edges.find((edge) => edge.name === 'armhole')!;
  const shoulder = outline.edges.find((edge) => edge.name === 'shoulder')!;
  const start = shoulder.segments.at(-1)!.to;
  const upperMm = pathLengthMm({ from: start, segments: armhole.segments.slice(0, 1) });
  return { edge: 'armhole', atMm: part === 1 ? upperMm : upperMm - 6 };
}

/** The waist, where both sides are brought together. */
function sideNotch(block: Block): Notch[] {
  const { side } = backHalf(block);
  return [{ edge: 'side', atMm: pathLengthMm({ from: side.from, segments: side.segments.slice(0, 1) }) }];
}

/** Both ends of the pocket's mouth, on the side. */
function pocketNotches(block: Block): Notch[] {
  const { side } = backHalf(block);
  const waistMm = pathLengthMm({ from: side.from, segments: side.segments.slice(0, 1) });
  const leftMm = pathLengthMm(side) - waistMm;
  const mouthMm = pocketMouthMm(block);
  const topMm = waistMm + Math.min(40, Math.max(4, leftMm - mouthMm - 30));
  return topMm + mouthMm < pathLengthMm(side)
    ? [
        { edge: 'side', atMm: topMm },
        { edge: 'side', atMm: topMm + mouthMm },
      ]
    : [];
}

function sleevePieces(input: DraftInput, { block, sleeve }: Armhole): Piece[] {
  const padded = [shell, ...batting(input.battingPlies.sleeve)];
  const lining: CutFrom[] =
    input.sleeveLining === 'own' ? [{ slotId: 'sleeve-lining', plyCount: 1 }] : [shell];
  const { under } = sleeve;
  const cut = (isLining: boolean, part: 'top' | 'under'): Outline =>
    sleeveOutline(
      part === 'top' ? sleeve.top : under!,
      under === null,
      isLining ? 'lining ' : '',
      block.allowanceMm,
    );
  const name = under ? 'Top sleeve' : 'Sleeve';
  const id = under ? 'top-sleeve' : 'sleeve';
  const outline = cut(false, 'top');
  const crown = {
    edge: 'cap',
    atMm: pathLengthMm({ from: sleeve.top.cap.from, segments: sleeve.top.cap.segments.slice(0, 1) }),
  };
  const frontPitchMm = Math.min(0.3 * sleeve.capHeightMm, 0.2 * edgeLengthMm(outline, 'cap'));
  return [
    piece(id, name, outline, padded, {
      ...pair,
      quilted: 'across',
      notches: [{ edge: 'cap', atMm: frontPitchMm }, crown],
    }),
    ...(under
      ? [piece('under-sleeve', 'Under sleeve', cut(false, 'under'), padded, { ...pair, quilted: 'across' })]
      : []),
    piece('cuff', 'Cuff', cuffOutline(sleeve, block.allowanceMm), [shell], { cutCount: 2, turns: 'free' }),
    piece(`${id}-lining`, `${name} lining`, cut(true, 'top'), lining, { ...pair, notches: [crown] }),
    ...(under ? [piece('under-sleeve-lining', 'Under sleeve lining', cut(true, 'under'), lining, pair)] : []),
  ];
}

function collarPieces(input: DraftInput, block: Block): Piece[] {
  if (!input.hasCollar) return [];
  const outline = collarOutline(block, 'neck');
  const backNeckMm = pathLengthMm(backHalf(block).neckline);
  // The neck edge runs from the front to the centre back; the notch takes the shoulder seam.
  const shoulder = { edge: 'neck edge', atMm: edgeLengthMm(outline, 'neck edge') - backNeckMm };
  return [
    piece('collar', 'Stand collar', outline, [shell, ...batting(Math.min(1, input.battingPlies.body))], {
      ...onFold,
      notches: [shoulder],
    }),
    piece('collar-facing', 'Collar facing', collarOutline(block, 'facing neck'), stiffened(input), {
      ...onFold,
      notches: [shoulder],
    }),
  ];
}

/** The inner layer is seen round the face, so it is cut from the shell's cloth. */
function hoodPieces(input: DraftInput, block: Block): Piece[] {
  if (input.hood === 'none') return [];
  const padded = [shell, ...batting(Math.min(1, input.battingPlies.body))];
  const outer = { crown: 'hood crown', neck: input.hasCollar ? 'hood neck' : 'neck' };
  const inner = { crown: 'hood lining crown', neck: input.hasCollar ? 'hood neck' : 'facing neck' };
  const hasCentre = input.hood === 'three panels';
  const quilted = { quilted: 'across' } as const;
  return [
    piece('hood-side', 'Hood side', hoodSideOutline(input, block, outer), padded, { ...pair, ...quilted }),
    ...(hasCentre
      ? [piece('hood-centre', 'Hood centre', hoodCentreOutline(input, block, outer), padded, quilted)]
      : []),
    piece('hood-side-lining', 'Hood side, inner', hoodSideOutline(input, block, inner), [shell], pair),
    ...(hasCentre
      ? [piece('hood-centre-lining', 'Hood centre, inner', hoodCentreOutline(input, block, inner), [shell])]
      : []),
  ];
}

function smallPieces(input: DraftInput, block: Block): Piece[] {
  const bag = { ...pair, turns: 'free' } as const;
  return [
    piece('welt', 'Pocket welt', weltOutline(block), [shell], { cutCount: 2 }),
    piece('bag-front', 'Pocket bag, coat side', pocketBagOutline(block), [pocketing], bag),
    piece('bag-back', 'Pocket bag, body side', pocketBagOutline(block), [pocketing], bag),
    piece('placket', 'Placket', placketOutline(block), stiffened(input)),
    ...(input.hasInterfacing
      ? [
          piece(
            'front-stay',
            input.lapMm > 0 ? 'Stay under the snaps' : 'Stay along the zip',
            frontStayOutline(block),
            [{ slotId: 'interfacing', plyCount: 1 }],
            { cutCount: 2 },
          ),
        ]
      : []),
    piece('hanging-loop', 'Hanging loop', loopOutline(), [shell], { turns: 'free' }),
  ];
}
