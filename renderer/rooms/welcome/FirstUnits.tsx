/** Asked once, of a new workshop: what figures and prices are in. What the locale proposes holds until it is changed. */
import { say, spokenLanguage } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Settings } from '../../../shared-core/contract/schemas.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChange } from '../../client/queries/changes.ts';
import { currencies } from '../../client/locale-units.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { OneOf } from '../../parts/forms/OneOf.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import style from './FirstUnits.module.css';

type Units = Pick<Settings, 'system' | 'currency' | 'unitsFrom'>;

export function FirstUnits() {
  const { facts } = useWorkshop();
  const { make: saveSettings } = useChange('saveSettings');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [units, setUnits] = useState<Units>(facts.settings);

  const save = async (next: Units) => {
    setUnits(next);
    const { system, currency, unitsFrom = 'locale' } = next;
    const answer = await saveSettings({ ...facts.settings, system, currency, unitsFrom });
    setProblems(answer.ok ? [] : answer.problems);
    if (!answer.ok) setUnits(facts.settings);
  };

  return (
    <section className={style.units} aria-labelledby="first-units">
      <div className={style.words}>
        <h2 id="first-units" className={style.title}>
          {say('first-units.your-units-and-currency')}
        </h2>
        <p className="quiet small">{say('first-units.as-is-usual-where-this-machine')}</p>
      </div>
      <OneOf
        label={say('first-units.units')}
        value={units.system}
        options={[
          { value: 'metric', label: say('first-units.metric'), hint: say('first-units.cm-m-g') },
          { value: 'imperial', label: say('first-units.imperial'), hint: say('first-units.in-yd-oz') },
        ]}
        onChange={(next) => void save({ ...units, system: next })}
      />
      <div className={style.currency}>
        <ChoiceField
          label={say('common.currency')}
          value={units.currency}
          options={currencyOptions(units.currency)}
          onChange={(next) => next !== '' && void save({ ...units, currency: next })}
        />
      </div>
      <Button onClick={() => void save({ ...units, unitsFrom: 'maker' })}>
        {say('first-units.keep-these')}
      </Button>
      <Problems problems={problems} />
    </section>
  );
}

function currencyOptions(current: string) {
  const names = new Intl.DisplayNames(spokenLanguage(), { type: 'currency', fallback: 'code' });
  const codes = currencies.includes(current) ? currencies : [current, ...currencies];
  return codes.map((code) => {
    const name = names.of(code);
    return { value: code, label: name === code || name === undefined ? code : `${code}, ${name}` };
  });
}
