/**
 * A dialog that slides over the room for a form; Escape and the backdrop close it, focus returns where it was. Where
 * something was typed in it that is not saved, it asks first.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { Dialog } from '@base-ui/react/dialog';
import { type ReactNode, useRef, useState } from 'react';
import { DiscardQuestion } from './DiscardQuestion.tsx';
import style from './Sheet.module.css';

export interface SheetProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly footer: ReactNode;
  /** A form stays open when the room beside it is clicked, so that a slip of the hand loses nothing typed. */
  readonly staysOnOutsidePress?: boolean;
  /** Something was typed that would be lost. */
  readonly isTyped?: boolean;
  /** Room for two columns. */
  readonly isWide?: boolean;
}

export function Sheet({
  title,
  isOpen,
  onClose,
  children,
  footer,
  staysOnOutsidePress = false,
  isTyped = false,
  isWide = false,
}: SheetProps) {
  const [isAsking, setIsAsking] = useState(false);
  const body = useRef<HTMLDivElement>(null);
  // The first field, rather than the button that closes the sheet.
  const firstField = () => body.current?.querySelector<HTMLElement>('input, select, textarea') ?? true;
  return (
    <Dialog.Root
      open={isOpen}
      disablePointerDismissal={staysOnOutsidePress}
      onOpenChange={(next) => {
        if (next) return;
        if (isTyped) setIsAsking(true);
        else onClose();
      }}
    >
      <Dialog.Portal>
        <Dialog.Backdrop className={style.backdrop} />
        <Dialog.Popup className={style.sheet} data-wide={isWide || undefined} initialFocus={firstField}>
          <header className={style.header}>
            <Dialog.Title className={style.title}>{title}</Dialog.Title>
            <Dialog.Close className={style.close} aria-label={say('common.close')}>
              ×
            </Dialog.Close>
          </header>
          <div ref={body} className={style.body}>
            {children}
          </div>
          <footer className={style.footer}>{footer}</footer>
          <DiscardQuestion isOpen={isAsking} onKeep={() => setIsAsking(false)} onDiscard={onClose} />
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
