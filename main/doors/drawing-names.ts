/** What the drawings of the lays are called on a disk: after their slots, in whatever script those are named. */

/** Room for a number and the ending in the 255 bytes (UTF-8) that a name may have on the usual disks. */
const maxStemBytes = 200;

/**
 * Names that Windows keeps for its devices, whatever ending follows.
 * Source: learn.microsoft.com/windows/win32/fileio/naming-a-file.
 */
const deviceName = /^(con|prn|aux|nul|(com|lpt)[0-9¹²³])$/;

/**
 * A file name for each slot, in the same order: small letters and digits of any script, hyphens between the words,
 * ending in ".svg". No two name one file, even on a disk that takes large and small letters, or an accent written
 * as one sign or two, for the same.
 */
export function drawingNames(slotNames: readonly string[]): string[] {
  const taken = new Set<string>();
  return slotNames.map((slotName) => {
    const stem = stemOf(slotName);
    let name = stem;
    for (let next = 2; taken.has(asDisksCompare(name)); next++) name = `${stem}-${next}`;
    taken.add(asDisksCompare(name));
    return `${name}.svg`;
  });
}

function stemOf(slotName: string): string {
  const words = slotName
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  const stem = cutToFit(words.replace(/^-/, '').normalize('NFC')).replace(/-$/, '');
  if (stem === '') return 'slot';
  return deviceName.test(stem) ? `${stem}-slot` : stem;
}

/** Cut between letters as readers see them, so that no accent or vowel sign is torn from its letter. */
function cutToFit(text: string): string {
  let kept = '';
  let sizeBytes = 0;
  for (const { segment } of new Intl.Segmenter().segment(text)) {
    sizeBytes += Buffer.byteLength(segment);
    if (sizeBytes > maxStemBytes) break;
    kept += segment;
  }
  return kept;
}

/** Stricter than any one disk: a number too many does no harm. */
function asDisksCompare(name: string): string {
  return name.normalize('NFKC').toUpperCase().toLowerCase().normalize('NFKC');
}
