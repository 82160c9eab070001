/** What is quilted as panels, in words: the same on the screen and in the text for scripts. */
import { say } from '../../wording/say.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { showQuantity } from '../../measure/show.ts';
import { type CoatPlan, slotById } from '../../plan/model/coat-plan.ts';
import { listed } from '../../wording/listed.ts';
import { panelName } from '../../plan/model/sizes.ts';
import type { QuiltedPanel } from './panels.ts';

/** "2.14 × 1.45 m", length first. */
export function panelSizeWords(
  { lengthMm, widthMm }: { readonly lengthMm: number; readonly widthMm: number },
  system: MeasureSystem,
): string {
  const unit = { metric: 'm', imperial: 'in' } as const;
  const show = (mm: number) =>
    showQuantity('length', mm, { system, unit, digits: system === 'metric' ? 2 : 1 });
  return `${show(lengthMm).replace(/ \S+$/, '')} × ${show(widthMm)}`;
}

/** "Panel of Back and Front, 6 times: 2.20 × 1.47 m of shell and 2 plies of batting; quilted 2.14 × 1.43 m". */
export function panelSentence(panel: QuiltedPanel, plan: CoatPlan, system: MeasureSystem): string {
  const layers = [...Map.groupBy(panel.layers, (layer) => panelSizeWords(layer, system))].map(
    ([size, alike]) =>
      say('panel-words.of', {
        size,
        alike: listed(
          alike.map(({ slotId, plyCount }) => {
            const { name } = slotById(plan, slotId);
            return plyCount === 1 ? name : say('panel-words.plies-of', { plyCount, name });
          }),
        ),
      }),
  );
  const times = panel.count === 1 ? '' : say('panel-words.times', { count: panel.count });
  const quilted = { lengthMm: panel.quiltedLengthMm, widthMm: panel.quiltedWidthMm };
  return say('panel-words.quilted', {
    panelId: panelName(panel.id),
    times,
    layers: listed(layers),
    panelSizeWords: panelSizeWords(quilted, system),
  });
}
