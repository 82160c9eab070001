/** Makes any picture that the window can show small enough to be kept in the workshop's file. */
import { maxPhotoBytes, maxPhotoSidePx } from '../../shared-core/stash/photo.ts';

/** Steps of JPEG quality, best first. The last keeps even noise under the limit. */
const qualities = [0.88, 0.8, 0.7, 0.6, 0.45, 0.3];

/**
 * The picture as a JPEG in base64, scaled down and stripped of what the camera wrote beside it (place, date, model);
 * null for a file that is no picture here.
 */
export async function smallPhoto(file: Blob): Promise<string | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return null;
  }
  const ratio = Math.min(1, maxPhotoSidePx / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * ratio));
  canvas.height = Math.max(1, Math.round(picture.height * ratio));
  const context = canvas.getContext('2d');
  if (!context) throw new Error('the window has no canvas');
  // JPEG has no transparency: what is clear becomes paper.
  context.fillStyle = 'white';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  let jpeg: Blob | null = null;
  for (const quality of qualities) {
    jpeg = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality));
    if (jpeg && jpeg.size <= maxPhotoBytes) break;
  }
  return jpeg && base64Of(jpeg);
}

async function base64Of(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
