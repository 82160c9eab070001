/** Why the cheapest basket is the cheapest, and what to mind before it is ordered. */
import { say } from '../../../shared-core/wording/say.ts';
import { useId } from 'react';
import {
  basketCautions,
  fewerSentence,
  leadSentence,
  whySentence,
} from '../../../shared-core/to-buy/basket-words.ts';
import type { BoughtBasket, ToBuy } from '../../../shared-core/to-buy/to-buy.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useWorkshop } from '../../client/workshop.ts';
import style from './BasketReasons.module.css';

export function BasketReasons({ toBuy, shown }: { toBuy: ToBuy; shown: BoughtBasket }) {
  const { input } = useCoat('input');
  const { system, currency } = useWorkshop().facts.settings;
  if (!input) return null;
  const words = { shelf: input.shelf, system, currency };
  const isCheapest = shown.payMinor === toBuy.payMinor;
  const whys = isCheapest
    ? toBuy.whys.map((why) => whySentence(why, words))
    : [fewerSentence(toBuy, shown, words)];
  const lead = leadSentence(shown);
  return (
    <div className={style.reasons}>
      <Sentences
        title={
          isCheapest ? say('basket-reasons.why-this-basket') : say('basket-reasons.against-the-cheapest')
        }
        sentences={whys}
      />
      <Sentences
        title={say('basket-reasons.before-you-order')}
        sentences={[...basketCautions(shown, input.today, words), ...(lead ? [lead] : [])]}
      />
    </div>
  );
}

function Sentences({ title, sentences }: { title: string; sentences: readonly string[] }) {
  const id = useId();
  if (sentences.length === 0) return null;
  return (
    <section aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      <ul className={style.list}>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
