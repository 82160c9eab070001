/** Writes a PDF and gives it to the maker; what came out otherwise than asked is told in a sentence. */
import { say } from '../../../shared-core/wording/say.ts';
import boldUrl from '../../../resources/typeface/noto-sans-bold.ttf?url';
import regularUrl from '../../../resources/typeface/noto-sans-regular.ttf?url';
import { lettersWords } from '../../../shared-core/paper/plain-letters.ts';
import type { TypefaceFiles, WrittenPdf } from '../../../shared-core/paper/typeface.ts';
import { logSaysWhere, noteFailure } from '../../client/note-failure.ts';
import { fileName, saveFile } from './save-file.ts';

let files: Promise<TypefaceFiles> | null = null;

/** name: in words. write: makes the file with the bytes of the typeface. Gives what is to be said, or ''. */
export async function savePdf(
  name: string,
  write: (files: TypefaceFiles) => Promise<WrittenPdf>,
): Promise<string> {
  try {
    files ??= readTypeface();
    const { bytes, missingLetters } = await write(await files);
    saveFile(fileName(name, 'pdf'), 'application/pdf', bytes);
    return missingLetters.length === 0
      ? ''
      : say('save-pdf.the-pdf-s-typeface-lacks-they', { lettersWords: lettersWords(missingLetters) });
  } catch (error) {
    files = null;
    noteFailure('pdf', error);
    return say('save-pdf.the-pdf-could-not-be-written', { logSaysWhere });
  }
}

async function readTypeface(): Promise<TypefaceFiles> {
  const [regular, bold] = await Promise.all([regularUrl, boldUrl].map(read));
  return { regular: regular!, bold: bold! };
}

async function read(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the typeface was answered by ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}
