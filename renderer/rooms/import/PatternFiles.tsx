/** The Plan room's way in and out for pattern files. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { patternFormats } from '../../../shared-core/exchange/pattern/formats.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { fileName, saveFile } from '../../parts/tables/save-file.ts';
import { FullSizeSheet } from './FullSizeSheet.tsx';
import { ImportSheet } from './ImportSheet.tsx';

export function PatternFiles() {
  const { input } = useCoat('input');
  const [isOpen, setIsOpen] = useState(false);
  const [isFullSizeOpen, setIsFullSizeOpen] = useState(false);
  if (!input) return null;
  const { plan } = input;
  return (
    <>
      <Button onClick={() => setIsOpen(true)}>{say('pattern-files.bring-in-pieces-from-a-file')}</Button>
      {plan.pieces.length > 0 &&
        patternFormats.map(({ name, ending, mediaType, write }) => (
          <Button
            key={name}
            look="quiet"
            onClick={() =>
              saveFile(
                fileName(say('pattern-files.pieces', { planName: plan.name }), ending.slice(1)),
                mediaType,
                write(plan),
              )
            }
          >
            {say('pattern-files.save-pieces-as', { name })}
          </Button>
        ))}
      {plan.pieces.length > 0 && (
        <Button look="quiet" onClick={() => setIsFullSizeOpen(true)}>
          {say('pattern-files.pieces-at-full-size')}
        </Button>
      )}
      {isFullSizeOpen && <FullSizeSheet plan={plan} onClose={() => setIsFullSizeOpen(false)} />}
      {isOpen && <ImportSheet onClose={() => setIsOpen(false)} />}
    </>
  );
}
