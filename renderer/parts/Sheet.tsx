/** A dialog that slides over the room for a form; Escape and the backdrop close it, focus returns where it was. */
import { Dialog } from '@base-ui/react/dialog';
import type { ReactNode } from 'react';
import style from './Sheet.module.css';

export interface SheetProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly footer: ReactNode;
}

export function Sheet({ title, isOpen, onClose, children, footer }: SheetProps) {
  return (
    <Dialog.Root open={isOpen} onOpenChange={(next) => !next && onClose()}>
      <Dialog.Portal>
        <Dialog.Backdrop className={style.backdrop} />
        <Dialog.Popup className={style.sheet}>
          <header className={style.header}>
            <Dialog.Title className={style.title}>{title}</Dialog.Title>
            <Dialog.Close className={style.close} aria-label="Close">
              ×
            </Dialog.Close>
          </header>
          <div className={style.body}>{children}</div>
          <footer className={style.footer}>{footer}</footer>
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
