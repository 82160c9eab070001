/** The workshop's own coat: knee length, quilted, with a hood that snaps on, made in a batch of six. */
import { onFold, pair, piece } from '../draft/written-piece.ts';
import { type CoatPlan, type CutFrom, emptySlot, type Piece, type Slot } from '../plan/model/coat-plan.ts';
import type { Outline } from '../plan/model/outline.ts';
import { defaultOrder } from '../plan/model/new-plan.ts';
import { edgeLengthMm } from '../plan/geometry/outline-ring.ts';
import { back, backLining, backNeckFacing, front, frontFacing, frontLining } from './coat-body.ts';
import { collar, hoodCentre, hoodSide } from './coat-hood.ts';
import { type CoatMeasures, fenwalkMeasures } from './coat-measures.ts';
import { belt, insidePocketBag, patchPocket, pocketFlap, welt, windFlap } from './coat-pockets.ts';
import { fenwalkSeams } from './coat-seams.ts';
import { cuff, topSleeve, underSleeve } from './coat-sleeve.ts';

const shell: CutFrom = { slotId: 'shell', plyCount: 1 };
const bodyLining: CutFrom = { slotId: 'body-lining', plyCount: 1 };
const sleeveLining: CutFrom = { slotId: 'sleeve-lining', plyCount: 1 };
const pocketing: CutFrom = { slotId: 'pocketing', plyCount: 1 };
const trim: CutFrom = { slotId: 'trim', plyCount: 1 };

function batting(plyCount: number): CutFrom {
  return { slotId: 'batting', plyCount };
}

/** Notches where the ease of the cap begins and ends, and where the armhole takes them. */
const capNotches = { front: 62, back: 74 };

function fenwalkPieces(m: CoatMeasures): Piece[] {
  const frontOutline = front(m);
  const backOutline = back(m);
  const sleeveOutline = topSleeve(m);
  const fromEnd = (outline: Outline, edge: string, mm: number) => edgeLengthMm(outline, edge) - mm;
  return [
    piece('back', 'Back', backOutline, [shell, batting(2)], {
      ...onFold,
      quilted: 'across',
      notches: [{ edge: 'armhole', atMm: fromEnd(backOutline, 'armhole', capNotches.back) }],
    }),
    piece('front', 'Front', frontOutline, [shell, batting(2)], {
      ...pair,
      quilted: 'across',
      notches: [
        { edge: 'armhole', atMm: fromEnd(frontOutline, 'armhole', capNotches.front) },
        { edge: 'front edge', atMm: m.zipAboveHemMm },
      ],
    }),
    piece('top-sleeve', 'Top sleeve', sleeveOutline, [shell, batting(1)], {
      ...pair,
      quilted: 'across',
      notches: [
        { edge: 'cap', atMm: capNotches.front },
        { edge: 'cap', atMm: fromEnd(sleeveOutline, 'cap', capNotches.back) },
      ],
    }),
    piece('under-sleeve', 'Under sleeve', underSleeve(m), [shell, batting(1)], {
      ...pair,
      quilted: 'across',
    }),
    piece('collar', 'Stand collar', collar(m), [shell, batting(1)], onFold),
    piece('hood-side', 'Hood side', hoodSide(m), [shell, batting(1)], pair),
    piece('hood-centre', 'Hood centre', hoodCentre(m), [shell, batting(1)]),
    piece('patch-pocket', 'Patch pocket', patchPocket(m), [shell, batting(1)], pair),
    piece('pocket-flap', 'Pocket flap', pocketFlap(m), [shell], pair),
    piece('pocket-flap-lining', 'Pocket flap, inner', pocketFlap(m), [shell], pair),
    piece('belt', 'Tie belt', belt(m), [shell]),
    piece('collar-facing', 'Collar facing', collar(m, 'facing neck'), [shell], onFold),
    piece('front-facing', 'Front facing', frontFacing(m), [shell], pair),
    piece('back-neck-facing', 'Back neck facing', backNeckFacing(m), [shell], onFold),
    piece('cuff', 'Cuff', cuff(m), [shell], { cutCount: 2, turns: 'free' }),
    piece('back-lining', 'Back lining', backLining(m), [bodyLining], onFold),
    piece('front-lining', 'Front lining', frontLining(m), [bodyLining], pair),
    piece('hood-side-lining', 'Hood side, inner', hoodSide(m, 'hood lining crown'), [shell], pair),
    piece('hood-centre-lining', 'Hood centre, inner', hoodCentre(m, 'hood lining crown'), [shell]),
    piece('top-sleeve-lining', 'Top sleeve lining', topSleeve(m, 'lining '), [sleeveLining], pair),
    piece('under-sleeve-lining', 'Under sleeve lining', underSleeve(m, 'lining '), [sleeveLining], pair),
    piece('patch-pocket-lining', 'Patch pocket lining', patchPocket(m), [pocketing], {
      ...pair,
      turns: 'free',
    }),
    piece('bag-front', 'Inside pocket bag, coat side', insidePocketBag(m), [pocketing], {
      ...pair,
      turns: 'free',
    }),
    piece('bag-back', 'Inside pocket bag, body side', insidePocketBag(m), [pocketing], {
      ...pair,
      turns: 'free',
    }),
    piece('welt', 'Inside pocket welt', welt(m), [trim], { cutCount: 2 }),
    piece('wind-flap', 'Wind flap', windFlap(m), [trim]),
  ];
}

/** What fills the slots; null leaves one to be chosen. */
export type SlotChoices = Readonly<Record<string, string | null>>;

function fenwalkSlots(m: CoatMeasures, choices: SlotChoices): Slot[] {
  const slots: Slot[] = [
    { ...emptySlot('shell', 'shell', 'cloth'), isQuilted: true },
    emptySlot('body-lining', 'body lining', 'cloth'),
    emptySlot('sleeve-lining', 'sleeve lining', 'cloth'),
    emptySlot('batting', 'batting', 'batting'),
    { ...emptySlot('pocketing', 'pocketing', 'cloth'), isSeen: false },
    emptySlot('trim', 'trim', 'cloth'),
    { ...emptySlot('sewing-thread', 'sewing thread', 'thread'), isSeen: true },
    { ...emptySlot('quilting-thread', 'quilting thread', 'thread'), isSeen: true },
    emptySlot('needles', 'needles', 'needle'),
    {
      ...emptySlot('zip', 'front zip', 'fastening'),
      isSeen: true,
      alongEdges: [
        { pieceId: 'front', edge: 'front edge' },
        { pieceId: 'collar', edge: 'front end' },
      ],
      shorterByMm: m.zipAboveHemMm,
    },
    { ...emptySlot('snaps', 'snaps', 'fastening'), isSeen: true, amountPerCoat: 13 },
    {
      ...emptySlot('cord', 'hood cord', 'fastening'),
      amountPerCoat: 1,
      alongEdges: [
        { pieceId: 'hood-side', edge: 'face' },
        { pieceId: 'hood-centre', edge: 'face' },
      ],
      alongEveryCopy: true,
      // Two ends of 19 cm to take hold of.
      shorterByMm: -380,
    },
    { ...emptySlot('toggles', 'cord toggles', 'fastening'), amountPerCoat: 2 },
    { ...emptySlot('label', 'sewn label', 'fastening'), amountPerCoat: 1 },
    { ...emptySlot('hang-loop', 'hang loop', 'fastening'), amountPerCoat: 1 },
  ];
  return slots.map((slot) => ({ ...slot, itemId: choices[slot.id] ?? null }));
}

/** The coat with its slots filled by `choices`, drafted to the given measures. */
export function fenwalkCoat(choices: SlotChoices, measures: CoatMeasures = fenwalkMeasures): CoatPlan {
  return {
    id: 'plan-fenwalk-40',
    name: 'Fenwalk coat',
    size: 'EU 40',
    coatCount: 6,
    slots: fenwalkSlots(measures, choices),
    pieces: fenwalkPieces(measures),
    seams: fenwalkSeams(measures.capEaseMm, measures.pleatMm),
    quilting: {
      spacingMm: 70,
      stitch: '301',
      stitchLengthMm: 3.2,
      threadSlotId: 'quilting-thread',
      order: defaultOrder,
    },
    clearanceMm: 3,
    threadWastageRatio: 0.15,
    sewingMinutesPerCoat: 640,
    notes:
      'Two layers of batting in the body, one in sleeves, hood, collar and patch pockets. The zip starts 25.6 cm above the hem. The back lining has a pleat of 48 mm at the centre.',
  };
}
