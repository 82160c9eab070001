/** Stitch types of ISO 4915 as makers know them. */
import { say } from '../../../shared-core/wording/say.ts';
import type { StitchType } from '../../../shared-core/plan/model/outline.ts';

export const stitchNames: Readonly<Record<StitchType, string>> = {
  '301': '301 lockstitch',
  '304': '304 zigzag',
  '401': '401 chainstitch',
  '503': say('stitch-names.503-two-thread-overedge'),
  '504': say('stitch-names.504-three-thread-overedge'),
  '516': say('stitch-names.516-safety-stitch'),
  '605': '605 coverstitch',
  hand: say('common.by-hand'),
};
