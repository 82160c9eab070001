/** In place of the rooms while no workshop can be read: why, and the ways on. */
import { say } from '../../shared-core/wording/say.ts';
import type { Workshop } from '../../shared-core/contract/contract.ts';
import type { Problem } from '../../shared-core/measure/problem.ts';
import { Button } from '../parts/forms/Button.tsx';
import { Problems } from '../parts/notes/Problems.tsx';
import { BackupTable } from '../rooms/settings/BackupTable.tsx';
import { SharingGroup } from '../rooms/settings/SharingGroup.tsx';
import { useBackups } from '../rooms/settings/backups-session.ts';
import style from './ShutWorkshop.module.css';

export interface ShutWorkshopProps {
  readonly workshop: Workshop;
  readonly problems: readonly Problem[];
  readonly onTryAgain: () => void;
  readonly onOwn: () => void;
}

export function ShutWorkshop(props: ShutWorkshopProps) {
  const { workshop, problems, onTryAgain, onOwn } = props;
  return (
    <main className={style.shut}>
      <h1>
        {workshop === 'own'
          ? say('shut-workshop.your-workshop-cannot-be-opened')
          : say('shut-workshop.the-demo-cannot-be-opened')}
      </h1>
      <Problems problems={problems} onTryAgain={onTryAgain} />
      {workshop === 'own' ? (
        <>
          <BringOneBack />
          <SharingGroup isOfSharedAlone />
        </>
      ) : (
        <div>
          <Button onClick={onOwn}>{say('shut-workshop.go-to-your-own-workshop')}</Button>
        </div>
      )}
    </main>
  );
}

/** Nothing where there is no backup, or the list cannot be had either: the problem above says all there is to say. */
function BringOneBack() {
  const session = useBackups();
  const { read, problems } = session;
  if (!read.data || read.data.rows.length === 0) return null;
  return (
    <section className={style.backups} aria-label={say('shut-workshop.backups')}>
      <h2>{say('shut-workshop.bring-a-backup-back')}</h2>
      <p className="quiet">{say('shut-workshop.the-file-that-cannot-be-opened')}</p>
      <Problems problems={problems} />
      <BackupTable session={session} question={say('shut-workshop.the-file-that-cannot-be-opened-2')} />
    </section>
  );
}
