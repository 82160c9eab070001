/** The workshop's name, units and currency, the look of the window, and where the data lies. Saved as soon as it is changed. */
import { type Language, languages, say } from '../../../shared-core/wording/say.ts';
import { useEffect, useRef, useState } from 'react';
import type { Settings } from '../../../shared-core/contract/schemas.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChange } from '../../client/queries/changes.ts';
import { chooseLanguage, chosenLanguage } from '../../client/language.ts';
import { chooseTheme, chosenTheme, type ThemeChoice } from '../../client/theme.ts';
import { isSharedWorkshop, useWorkshop } from '../../client/workshop.ts';
import { TextField } from '../../parts/forms/Field.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { OneOf } from '../../parts/forms/OneOf.tsx';
import { UpgradeNotes } from '../../parts/notes/UpgradeNotes.tsx';
import { AboutGroup } from './AboutGroup.tsx';
import { BackupsGroup } from './BackupsGroup.tsx';
import { Group } from './Group.tsx';
import { LogGroup } from './LogGroup.tsx';
import { SharingGroup } from './SharingGroup.tsx';
import style from './SettingsRoom.module.css';

const typingPauseMs = 500;

export function SettingsRoom() {
  const { workshop, facts } = useWorkshop();
  const { make: saveSettings } = useChange('saveSettings');
  const [settings, setSettings] = useState<Settings>(facts.settings);
  const [theme, setTheme] = useState<ThemeChoice>(chosenTheme);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const isShared = isSharedWorkshop(facts);
  const [savedCount, setSavedCount] = useState(0);
  // What waits to be saved, so that leaving the room within the pause loses nothing.
  const waiting = useRef<{ timer: number; save: () => void } | null>(null);
  useEffect(
    () => () => {
      if (!waiting.current) return;
      window.clearTimeout(waiting.current.timer);
      waiting.current.save();
    },
    [],
  );

  const change = (part: Partial<Settings>, pauseMs: number) => {
    const next = { ...settings, ...part };
    setSettings(next);
    if (waiting.current) window.clearTimeout(waiting.current.timer);
    const save = async () => {
      waiting.current = null;
      const answer = await saveSettings({ ...next, workshopName: next.workshopName.trim() });
      setProblems(answer.ok ? [] : answer.problems);
      if (answer.ok) setSavedCount((now) => now + 1);
    };
    waiting.current = { timer: window.setTimeout(() => void save(), pauseMs), save: () => void save() };
  };

  return (
    <div className={style.room}>
      <header className={style.header}>
        <h1>{say('common.settings')}</h1>
        <p className={style.saved} role="status" key={savedCount}>
          {savedCount > 0 && problems.length === 0 && say('settings-room.saved')}
        </p>
      </header>
      <Problems problems={problems} />

      <Group title={say('settings-room.workshop')} about={say('settings-room.the-name-stands-at-the-foot')}>
        <TextField
          label={say('settings-room.workshop-name')}
          value={settings.workshopName}
          placeholder={say('common.your-workshop')}
          onChange={(text) => change({ workshopName: text.slice(0, 120) }, typingPauseMs)}
        />
      </Group>

      <Group title={say('settings-room.units')} about={say('settings-room.what-figures-are-shown-in-any')}>
        <OneOf
          label={say('settings-room.units')}
          value={settings.system}
          options={[
            { value: 'metric', label: say('settings-room.metric'), hint: say('settings-room.cm-m-g-g-m') },
            {
              value: 'imperial',
              label: say('settings-room.imperial'),
              hint: say('settings-room.in-yd-oz-oz-yd'),
            },
          ]}
          onChange={(system) => change({ system, unitsFrom: 'maker' }, 0)}
        />
      </Group>

      <Group title={say('common.currency')} about={say('settings-room.one-currency-for-all-prices-changing')}>
        <div className={style.narrow}>
          <TextField
            label={say('common.currency')}
            value={settings.currency}
            hint={say('settings-room.three-letters-such-as-eur-gbp')}
            onChange={(text) =>
              change({ currency: text.trim().toUpperCase(), unitsFrom: 'maker' }, typingPauseMs)
            }
          />
        </div>
      </Group>

      <Group
        title={say('settings-room.language')}
        about={say('settings-room.kept-on-this-machine-files-keep')}
      >
        <OneOf
          label={say('settings-room.language')}
          value={chosenLanguage()}
          options={(Object.keys(languages) as Language[]).map((value) => ({
            value,
            label: languages[value],
            hint: '',
          }))}
          onChange={chooseLanguage}
        />
      </Group>

      <Group title={say('settings-room.look')} about={say('settings-room.kept-on-this-machine')}>
        <OneOf
          label={say('settings-room.look')}
          value={theme}
          options={[
            {
              value: 'system',
              label: say('settings-room.as-the-system'),
              hint: say('settings-room.follows-day-and-night'),
            },
            { value: 'light', label: say('settings-room.light'), hint: '' },
            { value: 'dark', label: say('settings-room.dark'), hint: '' },
          ]}
          onChange={(choice) => {
            chooseTheme(choice);
            setTheme(choice);
            setSavedCount((now) => now + 1);
          }}
        />
      </Group>

      <Group
        title={say(isShared ? 'settings-room.shared-workshop' : 'settings-room.data-file')}
        about={say(
          isShared
            ? 'settings-room.everything-is-kept-there'
            : 'settings-room.everything-you-enter-is-kept-in',
        )}
      >
        <code className={style.path}>{facts.dataFile}</code>
        <Problems problems={facts.fileProblems} />
        <UpgradeNotes notes={facts.upgradeNotes} />
      </Group>

      {workshop === 'own' && <BackupsGroup onBroughtBack={(now) => setSettings(now.settings)} />}

      {workshop === 'own' && <SharingGroup />}
      <LogGroup />
      <AboutGroup />
    </div>
  );
}
