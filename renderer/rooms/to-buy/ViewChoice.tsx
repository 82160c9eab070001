/** Two views of one list: what is bought and why, and the list as it is walked. */
import { say } from '../../../shared-core/wording/say.ts';
import style from './ShoppingList.module.css';

export type ListPurpose = 'choose' | 'shop';

const purposes: readonly { readonly value: ListPurpose; readonly label: string }[] = [
  { value: 'choose', label: say('view-choice.what-and-why') },
  { value: 'shop', label: say('view-choice.in-the-shop') },
];

export function ViewChoice({
  value,
  onChange,
}: {
  value: ListPurpose;
  onChange: (value: ListPurpose) => void;
}) {
  return (
    <fieldset className={`${style.arrange} ${style.views}`}>
      <legend className="only-read-aloud">{say('view-choice.view-of-the-list')}</legend>
      {purposes.map((purpose) => (
        <button
          key={purpose.value}
          type="button"
          aria-pressed={value === purpose.value}
          onClick={() => onChange(purpose.value)}
        >
          {purpose.label}
        </button>
      ))}
    </fieldset>
  );
}
