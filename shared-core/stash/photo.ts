/** The photo of an item's swatch: how large it may be, and what is known of it. What is kept is in jpeg.ts. */

/** The longer side. */
export const maxPhotoSidePx = 640;
/** So that a stash of some hundred photos stays a file of some ten megabytes. */
export const maxPhotoBytes = 200_000;

export interface PictureFacts {
  /** Only JPEG is saved; older files may hold the other. */
  readonly mediaType: 'image/jpeg' | 'image/webp';
  readonly widthPx: number;
  readonly heightPx: number;
}
