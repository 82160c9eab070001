/** The demo workshop's items. */
import type { Item } from '../stash/stash.ts';
import { clothItems } from './cloth-items.ts';
import { type GivenItem, givenItem } from './given-item.ts';

const batting = (given: GivenItem) => givenItem('batting', given);
const fill = (given: GivenItem) => givenItem('fill', given);
const thread = (given: GivenItem) => givenItem('thread', given);
const needle = (given: GivenItem) => givenItem('needle', given);
const fastening = (given: GivenItem) => givenItem('fastening', given);

export function demoItems(): Item[] {
  return [
    ...clothItems(),
    batting({
      id: 'item-fleecewell',
      name: 'Fleecewell 120',
      colour: 'white',
      place: 'loft, hanging roll',
      facts: {
        widthMm: '150 cm',
        arealMassGPerM2: '120 g/m2',
        loftMm: '9 mm',
        lineLimitMm: '25 cm',
        heldBy: 'bonding',
        needsBacking: false,
        fibre: '100 % polyester',
        careWash: 'wash at 40',
        careBleach: 'do not bleach',
        careDry: 'tumble dry low',
        careProfessional: 'do not dry clean',
      },
    }),
    batting({
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
        lineLimitMm: '3 in',
        heldBy: 'nothing',
        needsBacking: true,
        fibre: '100 % wool',
        shrinkageAlongRatio: '3 %',
        shrinkageAcrossRatio: '3 %',
        careWash: 'hand wash',
        careBleach: 'do not bleach',
        careDry: 'dry flat',
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
        careWash: 'wash at 30, gentle',
        careBleach: 'do not bleach',
        careDry: 'tumble dry low',
        careProfessional: 'do not dry clean',
      },
    }),
    fill({
      id: 'item-puffball',
      name: 'Puffball cluster',
      colour: 'white',
      place: 'loft, sack 2',
      facts: {
        fillPowerCm3PerG: '260 cm3/g',
        fibre: '100 % polyester',
        careWash: 'wash at 40',
        careDry: 'tumble dry low',
      },
    }),
    thread({
      id: 'item-spun-olive',
      name: 'Ropewalk spun 40',
      colour: 'dark olive',
      place: 'drawer 1',
      notes: 'Sewing thread for the olive coats.',
      facts: { sizeTex: '40 wt', spoolM: '1000 m', fibre: '100 % polyester' },
    }),
    thread({
      id: 'item-core-olive',
      name: 'Ropewalk core 120',
      colour: 'lichen',
      place: 'drawer 1',
      notes: 'Quilting thread, smoother, a shade lighter.',
      facts: { sizeTex: 'Tkt 120', spoolM: '1500 yd', fibre: '100 % polyester' },
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
      facts: {
        form: 'zip',
        lengthMm: '32 in',
        widthMm: '32 mm',
        opening: 'two-way, separating',
        careWash: 'wash at 40',
        careDry: 'tumble dry low',
        massG: '54 g',
      },
    }),
    fastening({
      id: 'item-zip-short',
      name: 'Clasper two-way zip, short',
      colour: 'black',
      place: 'drawer 5',
      facts: {
        form: 'zip',
        lengthMm: '28 in',
        widthMm: '32 mm',
        opening: 'two-way, separating',
        careWash: 'wash at 40',
        careDry: 'tumble dry low',
        massG: '47 g',
      },
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
