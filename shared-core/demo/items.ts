/** The demo workshop's items. Quantities are given as the makers typed them, and read like anything typed. */
import { readQuantity } from '../measure/read.ts';
import { emptyFacts, factFields, factProblems, type ItemKind } from '../stash/kinds.ts';
import type { Item } from '../stash/stash.ts';

interface Given {
  readonly id: string;
  readonly name: string;
  readonly colour: string;
  readonly place: string;
  readonly notes?: string;
  /** A text for a quantity, as typed; else the fact itself. */
  readonly facts: Readonly<Record<string, string | boolean>>;
}

/** Throws for a text that cannot be read: the demo's own mistake. */
function item(kind: ItemKind, given: Given): Item {
  const facts: Record<string, unknown> = { ...emptyFacts(kind) };
  const typed: Record<string, string> = {};
  const fields = new Map(factFields(kind));
  for (const [fact, value] of Object.entries(given.facts)) {
    const field = fields.get(fact);
    if (field?.kind === 'quantity' && typeof value === 'string') {
      const read = readQuantity(field.quantity, value, {
        where: `${field.label} of ${given.name}`,
        system: 'metric',
      });
      if (!read.ok)
        throw new RangeError(read.problems.map((problem) => `${problem.where} ${problem.what}`).join('; '));
      facts[fact] = read.value;
      typed[fact] = value;
    } else facts[fact] = value;
  }
  const [problem] = factProblems(kind, facts, given.name);
  if (problem) throw new RangeError(`${problem.where} ${problem.what}`);
  const { id, name, colour, place, notes = '' } = given;
  // The facts were checked against the kind's own fields just above.
  return { id, name, colour, place, notes, typed, kind, facts } as Item;
}

const cloth = (given: Given) => item('cloth', given);
const battingItem = (given: Given) => item('batting', given);
const fill = (given: Given) => item('fill', given);
const thread = (given: Given) => item('thread', given);
const needle = (given: Given) => item('needle', given);
const fastening = (given: Given) => item('fastening', given);

export function demoItems(): Item[] {
  return [
    cloth({
      id: 'item-peatwater',
      name: 'Peatwater nylon',
      colour: 'dark olive',
      place: 'rack 1, top',
      notes: 'Marks with a hot iron: press low, through a cloth.',
      facts: {
        widthMm: '147 cm',
        selvageMm: '1 cm',
        arealMassGPerM2: '1.6 oz/yd2',
        fibre: '100 % nylon',
        finish: 'calendered on one side, water-repellent',
        isDownProof: true,
        thicknessMm: '0.1 mm',
        care: 'wash at 30',
      },
    }),
    cloth({
      id: 'item-slatewater',
      name: 'Slatewater nylon',
      colour: 'slate blue',
      place: 'rack 1, top',
      facts: {
        widthMm: '58 in',
        selvageMm: '3/8 in',
        arealMassGPerM2: '1.9 oz/yd2',
        fibre: '100 % nylon',
        finish: 'water-repellent',
        isDownProof: true,
        thicknessMm: '0.12 mm',
        care: 'wash at 30',
      },
    }),
    cloth({
      id: 'item-heathback',
      name: 'Heathback poplin',
      colour: 'bracken',
      place: 'rack 1, middle',
      notes: 'Prewash before cutting.',
      facts: {
        widthMm: '150 cm',
        selvageMm: '12 mm',
        arealMassGPerM2: '128 g/m2',
        fibre: '65 % cotton, 35 % polyester',
        shrinkageAlongRatio: '3.5 %',
        shrinkageAcrossRatio: '1.5 %',
        thicknessMm: '0.24 mm',
        care: 'wash at 40',
      },
    }),
    cloth({
      id: 'item-emberday',
      name: 'Emberday flannel',
      colour: 'rust check',
      place: 'rack 2, top',
      notes: 'Warm body lining, brushed inside.',
      facts: {
        widthMm: '56 in',
        selvageMm: '1/2 in',
        arealMassGPerM2: '4.7 oz/yd2',
        fibre: '100 % cotton',
        finish: 'brushed on one side',
        hasNap: true,
        shrinkageAlongRatio: '4 %',
        shrinkageAcrossRatio: '2 %',
        thicknessMm: '0.6 mm',
        care: 'wash at 40',
      },
    }),
    cloth({
      id: 'item-millrace',
      name: 'Millrace twill lining',
      colour: 'oat',
      place: 'rack 2, top',
      facts: {
        widthMm: '142 cm',
        selvageMm: '8 mm',
        arealMassGPerM2: '92 g/m2',
        fibre: '100 % viscose',
        shrinkageAlongRatio: '2 %',
        thicknessMm: '0.16 mm',
        care: 'wash at 30',
      },
    }),
    cloth({
      id: 'item-otterslip',
      name: 'Otterslip taffeta',
      colour: 'ink',
      place: 'rack 2, middle',
      notes: 'Slippery: sleeves and hood.',
      facts: {
        widthMm: '140 cm',
        selvageMm: '7 mm',
        arealMassGPerM2: '58 g/m2',
        fibre: '100 % polyester',
        thicknessMm: '0.09 mm',
        care: 'wash at 40',
      },
    }),
    cloth({
      id: 'item-wherry',
      name: 'Wherry satin',
      colour: 'smoke',
      place: 'rack 2, middle',
      facts: {
        widthMm: '45 in',
        selvageMm: '1/4 in',
        arealMassGPerM2: '2.2 oz/yd2',
        fibre: '100 % acetate',
        thicknessMm: '0.12 mm',
        care: 'dry clean',
      },
    }),
    cloth({
      id: 'item-thimblefold',
      name: 'Thimblefold cotton',
      colour: 'unbleached',
      place: 'rack 3, left',
      notes: 'Pocketing.',
      facts: {
        widthMm: '44 in',
        selvageMm: '10 mm',
        arealMassGPerM2: '3.1 oz/yd2',
        fibre: '100 % cotton',
        shrinkageAlongRatio: '3 %',
        shrinkageAcrossRatio: '3 %',
        thicknessMm: '0.22 mm',
        care: 'wash at 60',
      },
    }),
    cloth({
      id: 'item-rowanberry',
      name: 'Rowanberry twill',
      colour: 'brick red',
      place: 'rack 3, left',
      notes: 'Contrast for wind flaps and welts.',
      facts: {
        widthMm: '145 cm',
        selvageMm: '9 mm',
        arealMassGPerM2: '165 g/m2',
        fibre: '80 % wool, 20 % nylon',
        thicknessMm: '0.42 mm',
        care: 'hand wash',
      },
    }),
    cloth({
      id: 'item-nettlebed',
      name: 'Nettlebed canvas',
      colour: 'moss',
      place: 'rack 3, right',
      facts: {
        widthMm: '137 cm',
        selvageMm: '11 mm',
        arealMassGPerM2: '210 g/m2',
        fibre: '100 % cotton',
        shrinkageAlongRatio: '5 %',
        shrinkageAcrossRatio: '2.5 %',
        thicknessMm: '0.45 mm',
        care: 'wash at 40',
      },
    }),
    battingItem({
      id: 'item-fleecewell',
      name: 'Fleecewell 120',
      colour: 'white',
      place: 'loft, hanging roll',
      facts: {
        widthMm: '150 cm',
        arealMassGPerM2: '120 g/m2',
        loftMm: '9 mm',
        fibre: '100 % polyester',
        care: 'wash at 40',
      },
    }),
    battingItem({
      id: 'item-woolmere',
      name: 'Woolmere sheet',
      colour: 'natural',
      place: 'loft, box A',
      notes: 'Packaged sheets.',
      facts: {
        widthMm: '72 in',
        sheetLengthMm: '90 in',
        arealMassGPerM2: '5.3 oz/yd2',
        loftMm: '1/2 in',
        fibre: '100 % wool',
        shrinkageAlongRatio: '3 %',
        shrinkageAcrossRatio: '3 %',
        care: 'hand wash',
      },
    }),
    fill({
      id: 'item-downdrift',
      name: 'Downdrift duck',
      colour: 'grey',
      place: 'loft, tin 1',
      notes: 'Open outdoors or with a mask: the dust is fine.',
      facts: {
        fillPowerCm3PerG: '650 in3/oz',
        fillMethod: 'steam conditioned, as the supplier says',
        fibre: '90 % duck down, 10 % duck feather',
        care: 'wash at 30',
      },
    }),
    fill({
      id: 'item-puffball',
      name: 'Puffball cluster',
      colour: 'white',
      place: 'loft, sack 2',
      facts: { fillPowerCm3PerG: '260 cm3/g', fibre: '100 % polyester', care: 'wash at 40' },
    }),
    thread({
      id: 'item-spun-olive',
      name: 'Ropewalk spun 40',
      colour: 'dark olive',
      place: 'drawer 1',
      notes: 'Sewing thread for the olive coats.',
      facts: { sizeTex: '40 tex', spoolM: '1000 m', fibre: '100 % polyester' },
    }),
    thread({
      id: 'item-core-olive',
      name: 'Ropewalk core 30',
      colour: 'lichen',
      place: 'drawer 1',
      notes: 'Quilting thread, finer, a shade lighter.',
      facts: { sizeTex: '30 tex', spoolM: '1500 yd', fibre: '100 % polyester' },
    }),
    thread({
      id: 'item-spun-oat',
      name: 'Ropewalk spun 27',
      colour: 'oat',
      place: 'drawer 2',
      facts: { sizeTex: 'Tkt 110', spoolM: '500 m', fibre: '100 % polyester' },
    }),
    needle({
      id: 'item-sharp-75',
      name: 'Brightpoint 75',
      colour: '',
      place: 'drawer 3',
      facts: { sizeNm: '75/11', point: 'sharp' },
    }),
    needle({
      id: 'item-sharp-90',
      name: 'Brightpoint 90',
      colour: '',
      place: 'drawer 3',
      facts: { sizeNm: '90/14', point: 'universal' },
    }),
    fastening({
      id: 'item-zip-long',
      name: 'Clasper two-way zip, long',
      colour: 'black',
      place: 'drawer 5',
      notes: 'Moulded teeth; shorten from the top.',
      facts: { form: 'zip', lengthMm: '32 in', widthMm: '32 mm', isSeparating: true, massG: '54 g' },
    }),
    fastening({
      id: 'item-zip-short',
      name: 'Clasper two-way zip, short',
      colour: 'black',
      place: 'drawer 5',
      facts: { form: 'zip', lengthMm: '28 in', widthMm: '32 mm', isSeparating: true, massG: '47 g' },
    }),
    fastening({
      id: 'item-snap-12',
      name: 'Tarnish snap 12',
      colour: 'old brass',
      place: 'drawer 6',
      notes: 'Set of four parts.',
      facts: { form: 'snap', widthMm: '1/2 in', massG: '1.8 g' },
    }),
    fastening({
      id: 'item-cord',
      name: 'Springtail cord',
      colour: 'dark olive',
      place: 'drawer 6',
      notes:
        'Cut and sealed. No cords at the hood or neck of a coat for a child: check the rules where you sell.',
      facts: { form: 'elastic', lengthMm: '118 cm', widthMm: '3 mm', massG: '5.5 g' },
    }),
    fastening({
      id: 'item-toggle',
      name: 'Acorn toggle',
      colour: 'horn',
      place: 'drawer 6',
      facts: { form: 'toggle', lengthMm: '22 mm', widthMm: '9 mm', massG: '2.4 g' },
    }),
    fastening({
      id: 'item-label',
      name: 'Woven name label',
      colour: 'oat on ink',
      place: 'drawer 7',
      facts: { form: 'label', lengthMm: '60 mm', widthMm: '15 mm', massG: '0.4 g' },
    }),
    fastening({
      id: 'item-hang-loop',
      name: 'Braid hang loop',
      colour: 'ink',
      place: 'drawer 7',
      facts: { form: 'tape', lengthMm: '3 1/2 in', widthMm: '6 mm', massG: '0.7 g' },
    }),
    fastening({
      id: 'item-corozo',
      name: 'Corozo button 20',
      colour: 'chestnut',
      place: 'drawer 7',
      facts: { form: 'button', widthMm: '20 mm', massG: '1.6 g' },
    }),
  ];
}
