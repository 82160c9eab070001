/** A small drawing for each kind of thing in the stash. It always stands beside the word. */
import type { ItemKind } from '../../../shared-core/stash/kinds.ts';
import style from './KindMark.module.css';

export function KindMark({ kind }: { kind: ItemKind }) {
  return (
    <svg className={style.mark} viewBox="0 0 20 20" aria-hidden="true">
      <Drawing kind={kind} />
    </svg>
  );
}

function Drawing({ kind }: { kind: ItemKind }) {
  switch (kind) {
    case 'cloth':
      return (
        <path d="M6.5 3.5h10v8.5h-10M6.5 3.5a2.2 2.2 0 0 0-2.9 2v9.2a2 2 0 0 0 4 0V5.8M7.6 14.7a2 2 0 0 1-2 2h9a2 2 0 0 0 2-2V12" />
      );
    case 'batting':
      return (
        <path d="M2.5 6.5c2.5-3 5 3 7.5 0s5 3 7.5 0M2.5 10.5c2.5-3 5 3 7.5 0s5 3 7.5 0M2.5 14.5c2.5-3 5 3 7.5 0s5 3 7.5 0" />
      );
    case 'fill':
      return (
        <path d="M4 16c1-6 5.5-11 12-12 .3 6.4-3.5 11-10 11.5M4 16c2.5-4 5-6.5 8-8.5M8.2 11.2 8 7.7M8.2 11.2l3.9.3" />
      );
    case 'thread':
      return <path d="M5.5 3.5h9M5.5 16.5h9M7 3.5v13M13 3.5v13M7 7l6-1.2M7 10l6-1.2M7 13l6-1.2" />;
    case 'needle':
      return (
        <path d="M3.5 16.5 14 6M14 6c.4-1.8 1.7-2.9 2.8-2.8.1 1.1-1 2.4-2.8 2.8ZM16.8 3.2c-4.8-.6-8.3 1.8-8.8 5" />
      );
    case 'fastening':
      return (
        <path d="M10 2.5v8M7.5 3.5h1.7M7.5 6h1.7M7.5 8.5h1.7M10.8 4.7h1.7M10.8 7.2h1.7M8 10.5h4l.6 3-1.3 1v2.5H8.7v-2.5l-1.3-1z" />
      );
    default:
      return kind satisfies never;
  }
}
