/** A bolt of cloth that hangs down, is quilted channel by channel, and turns into the front of a coat. */
import { say } from '../../../shared-core/wording/say.ts';
import style from './BoltDrawing.module.css';

/** Channels from the top down: where each begins and how high it is. The last ones are not stitched yet. */
const channels = Array.from({ length: 6 }, (_, index) => ({
  y: 196 + index * 44,
  height: 44,
  isStitched: index < 5,
}));
const left = 92;
const right = 388;

/** A channel seen from the front: straight where it is stitched, full at both sides. */
function channelPath(y: number, height: number): string {
  const bulge = 11;
  return [
    `M${left} ${y}`,
    `H${right}`,
    `C${right + bulge} ${y + height * 0.18} ${right + bulge} ${y + height * 0.82} ${right} ${y + height}`,
    `H${left}`,
    `C${left - bulge} ${y + height * 0.82} ${left - bulge} ${y + height * 0.18} ${left} ${y}Z`,
  ].join('');
}

/** Little creases that a row of stitches draws into the cloth, each a different length. */
function creases(y: number): string {
  return Array.from({ length: 22 }, (_, index) => {
    const x = left + 10 + index * 13.2;
    const reach = 5 + ((index * 7) % 5);
    return `M${x} ${y + 2}q${index % 2 === 0 ? 1.5 : -1.5} ${reach * 0.6} 0 ${reach}`;
  }).join('');
}

/** Lines of a cutting mat, both ways. */
const mat = [
  ...Array.from({ length: 9 }, (_, index) => `M${40 + index * 50} 20V480`),
  ...Array.from({ length: 10 }, (_, index) => `M16 ${30 + index * 50}H464`),
].join('');

/** Half of a coat's front, the edge of its middle towards the middle of the cloth, with two notches. */
const front =
  'M228 198C210 196 196 180 192 150L132 172C146 206 142 240 108 258L104 436H228ZM106 330h9M105 384h9M228 300h-9M228 368h-9';

export function BoltDrawing() {
  return (
    <svg
      className={style.drawing}
      viewBox="0 0 480 500"
      role="img"
      aria-label={say('bolt-drawing.cloth-comes-off-a-bolt-and')}
    >
      <defs>
        <linearGradient id="bolt-round" x1="0" y1="0" x2="0" y2="1">
          <stop className={style.light} offset="0" />
          <stop className={style.bright} offset="0.3" />
          <stop className={style.deep} offset="1" />
        </linearGradient>
        <linearGradient id="bolt-channel" x1="0" y1="0" x2="0" y2="1">
          <stop className={style.deep} offset="0" />
          <stop className={style.bright} offset="0.34" />
          <stop className={style.light} offset="0.72" />
          <stop className={style.deep} offset="1" />
        </linearGradient>
        <linearGradient id="bolt-flat" x1="0" y1="0" x2="0" y2="1">
          <stop className={style.deep} offset="0" />
          <stop className={style.light} offset="0.4" />
          <stop className={style.light} offset="1" />
        </linearGradient>
        <clipPath id="bolt-cloth">
          <path d="M92 100H388V196H92Z" />
        </clipPath>
      </defs>

      {/* The table's grid behind it all, as on a cutting mat. */}
      <path className={style.mat} d={mat} />

      {/* The cloth between bolt and quilting. */}
      <path d="M92 100H388V197H92Z" fill="url(#bolt-flat)" />
      <g clipPath="url(#bolt-cloth)" className={style.fall}>
        <path d="M150 104c-4 30 3 60-1 92M246 104c3 26-4 62 1 92M327 104c-3 34 4 56 0 92" />
      </g>

      {/* The bolt: a roll with its board's ends. */}
      <rect className={style.core} x="44" y="66" width="392" height="16" rx="8" />
      <rect x="72" y="36" width="336" height="76" rx="14" fill="url(#bolt-round)" />
      <path
        className={style.turns}
        d="M86 48c-5 14-5 38 0 52M96 44c-5 16-5 44 0 60M394 48c5 14 5 38 0 52M384 44c5 16 5 44 0 60"
      />
      <path className={style.selvage} d="M92 112H388" />

      {channels.map(({ y, height, isStitched }) => (
        <g key={y}>
          <path d={channelPath(y, height)} fill="url(#bolt-channel)" />
          {isStitched && <path className={style.crease} d={creases(y + height)} />}
          <path className={style.stitch} d={`M${left + 2} ${y}H${right - 2}`} />
        </g>
      ))}
      {/* The row that is being sewn stops at the needle. */}
      <path className={style.stitch} d="M94 460H276" />
      <path
        className={style.thread}
        d="M323 435c22-10 34 8 26 22-9 15-22 10-14 24 10 16 50 4 66-14 14-15 30-12 44-6"
      />
      <path className={style.needle} d="M278 459 326 433" />
      <path className={style.eye} d="M319 436.8l4.4-2.4" />

      {/* The two fronts of a coat, chalked on the cloth: neck, shoulder, armhole, side, hem, and grain. */}
      {[undefined, 'translate(480 0) scale(-1 1)'].map((mirror) => (
        <g key={mirror ?? 'plain'} transform={mirror}>
          <path className={style.chalk} d={front} />
          <path className={style.grain} d="M178 262V388M174 270l4-8 4 8M174 380l4 8 4-8" />
        </g>
      ))}
    </svg>
  );
}
