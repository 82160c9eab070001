/** Reads a PDF back: what stands on each page, letter by letter as a reader would select it, and where. */
import { decodePDFRawStream, PDFArray, PDFDocument, PDFRawStream } from '@cantoo/pdf-lib';

export interface PdfText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

export interface PdfSheet {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly PdfText[];
}

export async function pdfSheets(bytes: Uint8Array): Promise<readonly PdfSheet[]> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  return pdf
    .getPages()
    .map((page) => ({ ...page.getSize(), texts: textsOf(streamOf(pdf, page.node.Contents())) }));
}

function streamOf(pdf: PDFDocument, contents: unknown): string {
  if (!(contents instanceof PDFArray)) throw new Error('a page without a list of contents');
  return contents
    .asArray()
    .map((reference) => {
      const stream = pdf.context.lookup(reference);
      if (!(stream instanceof PDFRawStream)) throw new Error('contents that are no stream');
      return Buffer.from(decodePDFRawStream(stream).decode()).toString('latin1');
    })
    .join('\n');
}

function textsOf(stream: string): PdfText[] {
  return [...stream.matchAll(/BT([\s\S]*?)ET/g)].flatMap(([, block = '']) => {
    const [, hex = ''] = /<([0-9A-Fa-f]*)> Tj/.exec(block) ?? [];
    const [, x, y] = /([-\d.]+) ([-\d.]+) Tm/.exec(block) ?? [];
    const [, size] = /([\d.]+) Tf/.exec(block) ?? [];
    const text = new TextDecoder('windows-1252').decode(Buffer.from(hex, 'hex'));
    return [{ text, x: Number(x), y: Number(y), size: Number(size) }];
  });
}
