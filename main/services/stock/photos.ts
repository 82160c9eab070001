/** The photo of an item's swatch: one for each item, replaced or taken away without a trace in the ledger. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { plainJpeg } from '../../../shared-core/stash/jpeg.ts';
import { maxPhotoBytes, maxPhotoSidePx } from '../../../shared-core/stash/photo.ts';
import type { CallContext, Calls } from '../calls/call.ts';
import { noSuchItem } from './ledger.ts';

export const photoCalls = { readPhoto, savePhoto, removePhoto } satisfies Calls<
  'readPhoto' | 'savePhoto' | 'removePhoto'
>;

async function readPhoto(
  context: CallContext,
  { itemId }: CallInput<'readPhoto'>,
): Promise<Result<CallOutput<'readPhoto'>>> {
  if (!(await isItem(context, itemId))) return err(noSuchItem);
  const row = await context.queries
    .selectFrom('item_photo')
    .selectAll()
    .where('item_id', '=', itemId)
    .executeTakeFirst();
  if (!row) return ok({ photo: null });
  const { media_type: mediaType, width_px: widthPx, height_px: heightPx, saved_at: savedAt } = row;
  const photoBase64 = Buffer.from(row.bytes).toString('base64');
  return ok({ photo: { mediaType, widthPx, heightPx, photoBase64, savedAt } });
}

/** Kind and size are read from the picture itself, and nothing is kept of its file but the picture. */
async function savePhoto(
  context: CallContext,
  { itemId, photoBase64 }: CallInput<'savePhoto'>,
): Promise<Result<CallOutput<'savePhoto'>>> {
  if (!(await isItem(context, itemId))) return err(noSuchItem);
  const picture = plainJpeg(Buffer.from(photoBase64, 'base64'));
  if (!picture) return err(noPicture);
  const { widthPx, heightPx } = picture;
  const mediaType = 'image/jpeg' as const;
  const bytes = Buffer.from(picture.bytes);
  if (bytes.length > maxPhotoBytes || Math.max(widthPx, heightPx) > maxPhotoSidePx) {
    return err({
      where: say('photos.photo'),
      what: say('photos.is-too-large-x-px-kb', {
        widthPx,
        heightPx,
        bytesCount: Math.ceil(bytes.length / 1000),
      }),
      fix: say('photos.make-it-at-most-px-on', { maxPhotoSidePx, maxPhotoBytes: maxPhotoBytes / 1000 }),
    });
  }
  const savedAt = context.now().toISOString();
  const row = { media_type: mediaType, bytes, width_px: widthPx, height_px: heightPx, saved_at: savedAt };
  await context.queries
    .insertInto('item_photo')
    .values({ item_id: itemId, ...row })
    .onConflict((conflict) => conflict.column('item_id').doUpdateSet(row))
    .execute();
  const kept = bytes.toString('base64');
  return ok({ photo: { mediaType, widthPx, heightPx, photoBase64: kept, savedAt } });
}

async function removePhoto(
  context: CallContext,
  { itemId }: CallInput<'removePhoto'>,
): Promise<Result<CallOutput<'removePhoto'>>> {
  if (!(await isItem(context, itemId))) return err(noSuchItem);
  await context.queries.deleteFrom('item_photo').where('item_id', '=', itemId).execute();
  return ok({ itemId });
}

async function isItem({ queries }: CallContext, itemId: string): Promise<boolean> {
  const item = await queries.selectFrom('item').select('id').where('id', '=', itemId).executeTakeFirst();
  return item !== undefined;
}

const noPicture: Problem = {
  get where() {
    return say('photos.photo');
  },
  get what() {
    return say('photos.is-no-jpeg-picture-or-only');
  },
  get fix() {
    return say('photos.choose-another-picture');
  },
};
