import { describe, expect, test } from 'vitest';
import { maxPhotoBytes } from '../../../../shared-core/stash/photo.ts';
import { exif, jpeg } from '../../../fixtures/pictures.ts';
import { openAsking, receivedCloth, receivedFill } from '../../asking.ts';

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
    const empty = await asking.rows();
    await asking.get('savePhoto', { itemId, photoBase64: text(jpeg(200, 300)) });
    await asking.get('savePhoto', { itemId, photoBase64: text(jpeg(321, 457)) });
    const { photo } = await asking.get('readPhoto', { itemId });
    expect([photo?.mediaType, photo?.widthPx, photo?.heightPx]).toEqual(['image/jpeg', 321, 457]);
    expect(await asking.get('readItem', { itemId })).toEqual(before);
    await asking.get('removePhoto', { itemId });
    expect(await asking.get('readPhoto', { itemId })).toEqual({ photo: null });
    expect(await asking.rows()).toBe(empty);
  });

  test('that is no picture, is cut off or is too large is refused, and the one before stays', async () => {
    const asking = openAsking();
    const { itemId } = await receivedCloth(asking);
    await asking.get('savePhoto', { itemId, photoBase64: text(jpeg(200, 300)) });
    const whatOf = async (bytes: Uint8Array) =>
      (await asking.refusal('savePhoto', { itemId, photoBase64: text(bytes) }))[0]?.what;
    const no = 'is no JPEG picture, or only a part of one';
    expect(await whatOf(Buffer.from('%PDF-1.7 a price list of March'))).toBe(no);
    expect(await whatOf(Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]))).toBe(no);
    expect(await whatOf(Buffer.from([0xff]))).toBe(no);
    expect(await whatOf(jpeg(200, 300).subarray(0, 50))).toBe(no);
    expect(await whatOf(Buffer.from('RIFF\x16\0\0\0WEBPVP8L\x0a\0\0\0/'))).toBe(no);
    expect(await whatOf(jpeg(0, 300))).toBe(no);
    expect(await whatOf(jpeg(641, 300))).toBe('is too large: 641 x 300 px, 1 kB');
    expect(await whatOf(jpeg(300, 641))).toBe('is too large: 300 x 641 px, 1 kB');
    const max = maxPhotoBytes - jpeg(300, 400).length;
    expect(await whatOf(jpeg(300, 400, { filler: max + 1 }))).toBe('is too large: 300 x 400 px, 201 kB');
    const spoilt = await asking.refusal('savePhoto', { itemId, photoBase64: 'no such letters: *' });
    expect(spoilt[0]).toMatchObject({ where: 'Photo', what: 'is not written as it should be' });
    expect((await asking.get('readPhoto', { itemId })).photo?.widthPx).toBe(200);
    await asking.get('savePhoto', { itemId, photoBase64: text(jpeg(300, 400, { filler: max })) });
  });

  test('loses what the camera wrote beside it: place, date and model', async () => {
    const asking = openAsking();
    const { itemId } = await receivedCloth(asking);
    const beside = [
      [0xe1, exif()],
      [0xed, exif()],
      [0xe5, exif()],
      [0xfe, exif()],
      [0xe2, exif()],
    ] as const;
    const behind = Buffer.concat([jpeg(200, 300, { beside }), jpeg(160, 120, { beside })]);
    for (const bytes of [jpeg(200, 300, { beside }), behind]) {
      const saved = await asking.get('savePhoto', { itemId, photoBase64: text(bytes) });
      const { photo } = await asking.get('readPhoto', { itemId });
      expect(saved.photo).toEqual(photo);
      const kept = Buffer.from(photo!.photoBase64, 'base64');
      expect(kept.includes('GPS')).toBe(false);
      expect([photo!.widthPx, photo!.heightPx]).toEqual([200, 300]);
      // What was kept is a whole picture again.
      expect((await asking.get('savePhoto', { itemId, photoBase64: text(kept) })).photo.photoBase64).toBe(
        text(kept),
      );
    }
    const bare = jpeg(200, 300);
    expect((await asking.get('savePhoto', { itemId, photoBase64: text(bare) })).photo.photoBase64).toBe(
      text(bare),
    );
  });

  test('whose parts do not fit together is no picture', async () => {
    const asking = openAsking();
    const { itemId } = await receivedCloth(asking);
    const whole = jpeg(200, 300);
    const place = (sign: number) => whole.indexOf(Buffer.from([0xff, sign]));
    const spoilt = (at: number, ...values: number[]) => {
      const bytes = Buffer.from(whole);
      bytes.set(values, at);
      return bytes;
    };
    const without = (sign: number) => {
      const at = place(sign);
      return Buffer.concat([whole.subarray(0, at), whole.subarray(at + 2 + whole.readUInt16BE(at + 2))]);
    };
    const cases = [
      without(0xdb),
      without(0xc4),
      without(0xc0),
      without(0xda),
      spoilt(place(0xc0) + 1, 0xc3),
      spoilt(place(0xc0) + 4, 12),
      spoilt(place(0xc0) + 11, 0x51),
      spoilt(place(0xc0) + 12, 3),
      spoilt(place(0xc4) + 5, 3),
      spoilt(place(0xc4) + 4, 0x25),
      spoilt(place(0xda) + 5, 7),
      spoilt(place(0xda) + 6, 0x11),
      spoilt(place(0xda) + 8, 40),
      spoilt(place(0xdb) + 4, 0x0f),
      spoilt(place(0xdb) + 3, 60),
    ];
    for (const [index, bytes] of cases.entries()) {
      const problems = await asking.refusal('savePhoto', { itemId, photoBase64: text(bytes) });
      expect([index, problems[0]?.what]).toEqual([index, 'is no JPEG picture, or only a part of one']);
    }
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
    const before = await asking.rows();
    await asking.get('removePhoto', { itemId });
    expect((await asking.rows()) === before).toBe(false);
    await asking.get('restoreBackup', { name: rows[0]!.name });
    expect((await asking.rows()) === before).toBe(true);
    expect((await asking.get('readPhoto', { itemId })).photo?.photoBase64).toBe(text(jpeg(234, 567)));
  });
});
