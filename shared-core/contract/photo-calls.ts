/** The calls about the photo of an item's swatch. It is read by itself, so that lists and items stay quick. */
import { z } from 'zod';
import type { PictureFacts } from '../stash/photo.ts';
import type { ItemId } from '../stash/stash.ts';
import { id } from './schemas.ts';

/** Far above what is kept: what lies between is refused with its true size. */
const maxLetters = 4_000_000;

export const photoCalls = {
  readPhoto: { changes: false, input: z.strictObject({ itemId: id }) },
  /** A JPEG as base64, kept without what a camera wrote beside it; it takes the place of the photo before. */
  savePhoto: {
    changes: true,
    input: z.strictObject({ itemId: id, photoBase64: z.base64().min(1).max(maxLetters) }),
  },
  removePhoto: { changes: true, input: z.strictObject({ itemId: id }) },
} as const;

export interface ItemPhoto extends PictureFacts {
  readonly photoBase64: string;
  /** ISO, UTC. */
  readonly savedAt: string;
}

export interface PhotoOutputs {
  readPhoto: { readonly photo: ItemPhoto | null };
  savePhoto: { readonly photo: ItemPhoto };
  removePhoto: { readonly itemId: ItemId };
}
