/** A small frame with the photo of the item's swatch, or the way to add one. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useRef, useState } from 'react';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { useRead } from '../../../client/queries/reads.ts';
import { smallPhoto } from '../../../client/small-photo.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../../parts/notes/ReadProblems.tsx';
import style from './SwatchPhoto.module.css';

/** Mount it anew for another item. */
export function SwatchPhoto({ item }: { item: Item }) {
  const read = useRead('readPhoto', { itemId: item.id });
  const { make: savePhoto } = useChange('savePhoto');
  const { make: removePhoto } = useChange('removePhoto');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isBusy, setIsBusy] = useState(false);
  const fileInput = useRef<HTMLInputElement>(null);
  // undefined: not read yet.
  const photo = read.data?.photo;

  const take = async (file: File | undefined) => {
    if (!file) return;
    setIsBusy(true);
    const photoBase64 = await smallPhoto(file);
    if (photoBase64 === null) {
      setProblems([noPicture(file.name)]);
    } else {
      const saved = await savePhoto({ itemId: item.id, photoBase64 });
      setProblems(saved.ok ? [] : saved.problems);
    }
    setIsBusy(false);
  };

  const takeAway = async () => {
    const gone = await removePhoto({ itemId: item.id });
    setProblems(gone.ok ? [] : gone.problems);
  };

  const choose = () => fileInput.current?.click();
  return (
    <section className={style.swatch} aria-label={say('swatch-photo.photo-of-the-swatch')}>
      <input
        ref={fileInput}
        hidden
        type="file"
        accept="image/*"
        onChange={(event) => {
          void take(event.target.files?.[0]);
          // The same file may be chosen again.
          event.target.value = '';
        }}
      />
      {photo && (
        <img
          className={style.photo}
          src={say('swatch-photo.data-base64', {
            mediaType: photo.mediaType,
            photoBase64: photo.photoBase64,
          })}
          width={photo.widthPx}
          height={photo.heightPx}
          alt={say('swatch-photo.swatch-of', { itemName: item.name })}
        />
      )}
      {photo !== undefined && (
        <div className={photo ? style.beside : style.empty}>
          <Button look="quiet" onClick={choose} disabled={isBusy}>
            {photo ? say('common.change') : say('swatch-photo.add-a-photo-of-the-swatch')}
          </Button>
          {photo && (
            <Button look="quiet" onClick={() => void takeAway()} disabled={isBusy}>
              {say('swatch-photo.take-away')}
            </Button>
          )}
        </div>
      )}
      <ReadProblems read={read} />
      <Problems problems={problems} />
    </section>
  );
}

function noPicture(name: string): Problem {
  return {
    where: name,
    what: say('swatch-photo.is-no-picture-that-can-be'),
    fix: say('swatch-photo.choose-a-jpeg-png-or-webp'),
  };
}
