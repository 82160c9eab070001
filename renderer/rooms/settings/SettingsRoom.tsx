/** The workshop's name, units and currency, the look of the window, and where the data lies. Saved as soon as it is changed. */
import { useEffect, useRef, useState } from 'react';
import type { Settings } from '../../../shared-core/contract/schemas.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChange } from '../../client/queries/changes.ts';
import { chooseTheme, chosenTheme, type ThemeChoice } from '../../client/theme.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { TextField } from '../../parts/forms/Field.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { OneOf } from '../../parts/forms/OneOf.tsx';
import { UpgradeNotes } from '../../parts/notes/UpgradeNotes.tsx';
import { AboutGroup } from './AboutGroup.tsx';
import { BackupsGroup } from './BackupsGroup.tsx';
import { Group } from './Group.tsx';
import { LogGroup } from './LogGroup.tsx';
import style from './SettingsRoom.module.css';

const typingPauseMs = 500;

export function SettingsRoom() {
  const { workshop, facts } = useWorkshop();
  const { make: saveSettings } = useChange('saveSettings');
  const [settings, setSettings] = useState<Settings>(facts.settings);
  const [theme, setTheme] = useState<ThemeChoice>(chosenTheme);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
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
        <h1>Settings</h1>
        <p className={style.saved} role="status" key={savedCount}>
          {savedCount > 0 && problems.length === 0 && 'Saved'}
        </p>
      </header>
      <Problems problems={problems} />

      <Group title="Workshop" about="The name stands at the foot of the rail and on what you print.">
        <TextField
          label="Workshop name"
          value={settings.workshopName}
          placeholder="Your workshop"
          onChange={(text) => change({ workshopName: text.slice(0, 120) }, typingPauseMs)}
        />
      </Group>

      <Group
        title="Units"
        about="What figures are shown in. Any field takes either, and what you typed is shown back as you typed it."
      >
        <OneOf
          label="Units"
          value={settings.system}
          options={[
            { value: 'metric', label: 'Metric', hint: 'cm, m, g, g/m²' },
            { value: 'imperial', label: 'Imperial', hint: 'in, yd, oz, oz/yd²' },
          ]}
          onChange={(system) => change({ system, unitsFrom: 'maker' }, 0)}
        />
      </Group>

      <Group
        title="Currency"
        about="One currency for all prices. Changing it changes the word beside each amount; the amounts themselves stay as they were typed. Once there are amounts, it can become only a currency with as many decimal places."
      >
        <div className={style.narrow}>
          <TextField
            label="Currency"
            value={settings.currency}
            hint="Three letters, such as EUR, GBP or USD"
            onChange={(text) =>
              change({ currency: text.trim().toUpperCase(), unitsFrom: 'maker' }, typingPauseMs)
            }
          />
        </div>
      </Group>

      <Group title="Look" about="Kept on this machine.">
        <OneOf
          label="Look"
          value={theme}
          options={[
            { value: 'system', label: 'As the system', hint: 'follows day and night' },
            { value: 'light', label: 'Light', hint: '' },
            { value: 'dark', label: 'Dark', hint: '' },
          ]}
          onChange={(choice) => {
            chooseTheme(choice);
            setTheme(choice);
            setSavedCount((now) => now + 1);
          }}
        />
      </Group>

      <Group
        title="Data file"
        about="Everything you enter is kept in this one file on this machine. To keep a second one elsewhere, back up below and copy the backup."
      >
        <code className={style.path}>{facts.dataFile}</code>
        <Problems problems={facts.fileProblems} />
        <UpgradeNotes notes={facts.upgradeNotes} />
      </Group>

      {workshop === 'own' && <BackupsGroup onBroughtBack={(now) => setSettings(now.settings)} />}

      <LogGroup />
      <AboutGroup />
    </div>
  );
}
