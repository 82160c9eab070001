/** What is quilted as panels before pieces are cut from it: how large, how many, and where the pieces lie on it. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { LaidPanel } from '../../../shared-core/flow/panel-lays.ts';
import { laySvg } from '../../../shared-core/lay/lay-svg.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { panelSentence } from '../../../shared-core/requirement/cut/panel-words.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { LayPicture } from '../../parts/drawing/LayPicture.tsx';
import { fileName, saveFile } from '../../parts/tables/save-file.ts';
import style from './QuiltingRoom.module.css';

/** Nothing where no piece is cut from a panel, or while none is planned yet. */
export function Panels() {
  const { input, estimate } = useCoat('input', 'estimate');
  const panels = estimate?.panels ?? [];
  if (!input || panels.length === 0) return null;
  return (
    <section aria-labelledby="panels">
      <h2 id="panels" className={style.title}>
        {say('panels.panels-to-quilt')}
      </h2>
      <p className={style.lead}>{say('panels.quilt-every-layer-in-one-piece')}</p>
      <ul className={style.panels}>
        {panels.map((panel) => (
          <Panel key={panel.id} panel={panel} plan={input.plan} />
        ))}
      </ul>
    </section>
  );
}

function Panel({ panel, plan }: { panel: LaidPanel; plan: CoatPlan }) {
  const system = useSystem();
  const name = sentenceCase(panel.id);
  const save = () =>
    saveFile(fileName(`${plan.name} ${panel.id}`, 'svg'), 'image/svg+xml', laySvg(plan, panel.lay));
  return (
    <li className={style.panel}>
      <LayPicture slotLay={panel.lay} label={say('panels.with-its-pieces', { name })} />
      <p>{panelSentence(panel, plan, system)}</p>
      <div>
        <Button aria-label={say('panels.save-drawing-2', { name })} onClick={save}>
          {say('panels.save-drawing')}
        </Button>
      </div>
    </li>
  );
}
