/** Shapes of an item's facts and of the texts that they were typed as. */
import { say } from '../wording/say.ts';
import { z } from 'zod';
import { withoutControls } from '../measure/text/plain-signs.ts';

/** Far more than any kind has; what is larger is not looked into. */
const maxFacts = 200;
const fewEntries = z
  .unknown()
  .refine((given) => typeof given !== 'object' || given === null || Object.keys(given).length <= maxFacts, {
    get error() {
      return say('fact-schemas.is-a-list-of-more-than', { maxFacts });
    },
    abort: true,
  });

export const factValues = fewEntries.pipe(
  z.record(z.string(), z.union([z.number(), z.string().overwrite(withoutControls), z.boolean(), z.null()])),
);
export const typedTexts = fewEntries.pipe(z.record(z.string(), z.string().max(80)));
