/** Stands round a room, and round the window: what throws while it is drawn becomes a sentence with a way on. */
import { say } from '../../shared-core/wording/say.ts';
import { Component, type ReactNode } from 'react';
import { logSaysWhere, noteFailure } from '../client/note-failure.ts';
import { queryClient } from '../client/queries/query-client.ts';
import { routeHash } from '../client/route.ts';
import { Button } from '../parts/forms/Button.tsx';
import style from './Boundary.module.css';

interface BoundaryProps {
  /** Another place is shown afresh, whatever became of the one before. */
  readonly place: string;
  /** The whole window: it can only be loaded again. */
  readonly isWindow?: boolean;
  readonly children: ReactNode;
}

interface BoundaryState {
  readonly place: string;
  /** Null while nothing was thrown. */
  readonly reason: string | null;
}

// React tells of what was thrown to classes alone.
export class Boundary extends Component<BoundaryProps, BoundaryState> {
  override state: BoundaryState = { place: this.props.place, reason: null };

  static getDerivedStateFromError(thrown: unknown): Partial<BoundaryState> {
    return { reason: thrown instanceof Error ? thrown.message : String(thrown) };
  }

  static getDerivedStateFromProps({ place }: BoundaryProps, state: BoundaryState): BoundaryState | null {
    return place === state.place ? null : { place, reason: null };
  }

  override componentDidCatch(thrown: unknown): void {
    noteFailure(/^#\/([a-z-]+)/.exec(this.props.place)?.[1] ?? 'start', thrown);
  }

  override render(): ReactNode {
    const { reason } = this.state;
    const { isWindow = false, children } = this.props;
    if (reason === null) return children;
    const openAgain = () => {
      if (isWindow) return window.location.reload();
      // What it could not draw may lie in what was read.
      queryClient.removeQueries({ type: 'inactive' });
      this.setState({ reason: null });
    };
    const goBack = () => isWindow && window.setTimeout(() => window.location.reload());
    return (
      <section className={style.mishap} role="alert" data-window={isWindow || undefined}>
        <h1>
          {isWindow ? say('boundary.this-window-cannot-be-shown') : say('boundary.this-room-cannot-be-shown')}
        </h1>
        <p>{say('boundary.something-in-it-could-not-be')}</p>
        <p className="quiet small">{say('boundary.what-went-wrong', { reason, logSaysWhere })}</p>
        <div className={style.ways}>
          <Button look="main" onClick={openAgain}>
            {say('boundary.open-it-again')}
          </Button>
          <a href={routeHash({ kind: 'welcome' })} onClick={goBack}>
            {say('boundary.back-to-the-start')}
          </a>
        </div>
      </section>
    );
  }
}
