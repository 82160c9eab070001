import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { backupFolder } from '../../../main/database/backup-folder.ts';
import { mostPhotoBytes } from '../../../shared-core/stash/photo.ts';
import { dump, openAsking, receivedCloth, receivedFill } from '../asking.ts';

/** The start and end of a JPEG (a segment of the camera's, then the frame), with filler where the picture would be. */
function jpeg(widthPx: number, heightPx: number, filler = 40): Buffer {
  const camera = [0xff, 0xe1, 0, 6, 1, 2, 3, 4];
  const frame = [0xff, 0xc2, 0, 17, 8, heightPx >> 8, heightPx & 255, widthPx >> 8, widthPx & 255];
  const picture = Buffer.alloc(filler, 0x5a);
  return Buffer.concat([Buffer.from([0xff, 0xd8, ...camera, ...frame]), picture, Buffer.from([0xff, 0xd9])]);
}

function webp(chunk: 'VP8 ' | 'VP8L' | 'VP8X', widthPx: number, heightPx: number): Buffer {
  const bytes = Buffer.alloc(58, 0);
  bytes.write('RIFF');
  bytes.writeUInt32LE(50, 4);
  bytes.write(`WEBP${chunk}`, 8);
  if (chunk === 'VP8 ') {
    bytes.writeUInt16LE(widthPx, 26);
    bytes.writeUInt16LE(heightPx, 28);
  } else if (chunk === 'VP8L') {
    bytes.writeUInt32LE((widthPx - 1) | ((heightPx - 1) << 14), 21);
  } else {
    bytes.writeUIntLE(widthPx - 1, 24, 3);
    bytes.writeUIntLE(heightPx - 1, 27, 3);
  }
  return bytes;
}

const text = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');

describe('a photo of the swatch', () => {
  test('is kept beside its item, whatever its kind, and is there when the file is opened again', async () => {
    const first = openAsking({ now: () => new Date('2026-03-27T08:09:10.000Z') });
    const { itemId } = await receivedCloth(first);
    const fill = await receivedFill(first, 640);
    expect(await first.get('readPhoto', { itemId })).toEqual({ photo: null });
    const photo = {
      mediaType: 'image/jpeg',
      widthPx: 612,
      heightPx: 459,
      photoBase64: text(jpeg(612, 459)),
      savedAt: '2026-03-27T08:09:10.000Z',
    };
    expect(await first.get('savePhoto', { itemId, photoBase64: photo.photoBase64 })).toEqual({ photo });
    await first.get('savePhoto', { itemId: fill.itemId, photoBase64: text(jpeg(31, 640)) });
    first.services.close();
    const second = openAsking({ dataFile: first.dataFile });
    expect(await second.get('readPhoto', { itemId })).toEqual({ photo });
    const ofFill = (await second.get('readPhoto', { itemId: fill.itemId })).photo;
    expect([ofFill?.widthPx, ofFill?.heightPx]).toEqual([31, 640]);
  });

  test('gives way to another and can be taken away; the ledger knows nothing of it', async () => {
    const asking = openAsking();
    const { itemId } = await receivedCloth(asking);
    const before = await asking.get('readItem', { itemId });
    const empty = dump(asking.dataFile);
    for (const [chunk, width] of [
      ['VP8 ', 321],
      ['VP8L', 322],
      ['VP8X', 323],
    ] as const) {
      await asking.get('savePhoto', { itemId, photoBase64: text(jpeg(200, 300)) });
      await asking.get('savePhoto', { itemId, photoBase64: text(webp(chunk, width, 457)) });
      const { photo } = await asking.get('readPhoto', { itemId });
      expect([photo?.mediaType, photo?.widthPx, photo?.heightPx]).toEqual(['image/webp', width, 457]);
    }
    expect(await asking.get('readItem', { itemId })).toEqual(before);
    await asking.get('removePhoto', { itemId });
    expect(await asking.get('readPhoto', { itemId })).toEqual({ photo: null });
    expect(dump(asking.dataFile)).toBe(empty);
  });

  test('that is no picture, is cut off or is too large is refused, and the one before stays', async () => {
    const asking = openAsking();
    const { itemId } = await receivedCloth(asking);
    await asking.get('savePhoto', { itemId, photoBase64: text(jpeg(200, 300)) });
    const whatOf = async (bytes: Uint8Array) =>
      (await asking.refusal('savePhoto', { itemId, photoBase64: text(bytes) }))[0]?.what;
    const no = 'is no JPEG or WebP picture, or only a part of one';
    expect(await whatOf(Buffer.from('%PDF-1.7 a price list of March'))).toBe(no);
    expect(await whatOf(Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]))).toBe(no);
    expect(await whatOf(Buffer.from([0xff]))).toBe(no);
    expect(await whatOf(jpeg(200, 300).subarray(0, 50))).toBe(no);
    expect(await whatOf(webp('VP8X', 200, 300).subarray(0, 57))).toBe(no);
    expect(await whatOf(jpeg(0, 300))).toBe(no);
    expect(await whatOf(jpeg(641, 300))).toBe('is too large: 641 x 300 px, 1 kB');
    expect(await whatOf(jpeg(300, 641))).toBe('is too large: 300 x 641 px, 1 kB');
    const most = mostPhotoBytes - jpeg(300, 400, 0).length;
    expect(await whatOf(jpeg(300, 400, most + 1))).toBe('is too large: 300 x 400 px, 201 kB');
    const spoilt = await asking.refusal('savePhoto', { itemId, photoBase64: 'no such letters: *' });
    expect(spoilt[0]).toMatchObject({ where: 'Photo', what: 'is not written as it should be' });
    expect((await asking.get('readPhoto', { itemId })).photo?.widthPx).toBe(200);
    await asking.get('savePhoto', { itemId, photoBase64: text(jpeg(300, 400, most)) });
  });

  test('of what is not in the stash is refused', async () => {
    const asking = openAsking();
    const photoBase64 = text(jpeg(200, 300));
    for (const [call, input] of [
      ['savePhoto', { itemId: 'gone', photoBase64 }],
      ['readPhoto', { itemId: 'gone' }],
      ['removePhoto', { itemId: 'gone' }],
    ] as const) {
      expect((await asking.refusal(call, input))[0]?.what).toBe('is not in the stash');
    }
  });

  test('comes back with a backup', async () => {
    const asking = openAsking();
    const { itemId } = await receivedCloth(asking);
    await asking.get('savePhoto', { itemId, photoBase64: text(jpeg(234, 567)) });
    const { rows } = await asking.get('backUp', {});
    await asking.get('removePhoto', { itemId });
    expect(dump(join(backupFolder(asking.dataFile), rows[0]!.name))).not.toBe(dump(asking.dataFile));
    await asking.get('bringBack', { name: rows[0]!.name });
    expect((await asking.get('readPhoto', { itemId })).photo?.photoBase64).toBe(text(jpeg(234, 567)));
  });
});
