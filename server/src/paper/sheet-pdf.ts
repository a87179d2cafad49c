/** Sheets of marks as a PDF: the same marks the screen shows, in millimetres of A3 paper. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { A3, type Sheet, type SheetMark, type SheetText } from '@enfilade/shared/sheet';

const POINTS_PER_MM = 72 / 25.4;
const INK = '#111111';

const require = createRequire(import.meta.url);

const FACES: Record<SheetText['face'], string> = {
  serif: '@fontsource/source-serif-4/files/source-serif-4-latin-400-normal.woff',
  sans: '@fontsource/archivo/files/archivo-latin-400-normal.woff',
  'sans bold': '@fontsource/archivo/files/archivo-latin-600-normal.woff',
};

/** @returns the bytes of a PDF with one A3 landscape page a sheet. */
export async function toPdf(sheets: readonly Sheet[], about: { readonly title: string }): Promise<Buffer> {
  // Loaded with the first paper: it takes longer than the rest of a start.
  const { default: PDFDocument } = await import('pdfkit');
  const pdf = new PDFDocument({ autoFirstPage: false, info: { Title: about.title, Producer: 'Enfilade' } });
  for (const [face, path] of Object.entries(FACES)) pdf.registerFont(face, readFileSync(require.resolve(path)));
  const parts: Buffer[] = [];
  const whole = new Promise<Buffer>((done, fail) => {
    pdf.on('data', (part: Buffer) => parts.push(part));
    pdf.on('end', () => done(Buffer.concat(parts)));
    pdf.on('error', fail);
  });
  for (const sheet of sheets) {
    pdf.addPage({ size: [A3.widthMm * POINTS_PER_MM, A3.heightMm * POINTS_PER_MM], margin: 0 });
    pdf.scale(POINTS_PER_MM);
    for (const mark of sheet.marks) draw(pdf, mark);
  }
  pdf.end();
  return whole;
}

function draw(pdf: PDFKit.PDFDocument, mark: SheetMark): void {
  switch (mark.kind) {
    case 'line':
      dashed(pdf, mark.dash).lineWidth(mark.weightMm).moveTo(mark.x1, mark.y1).lineTo(mark.x2, mark.y2).stroke(INK);
      return;
    case 'ring':
      dashed(pdf, undefined).lineWidth(mark.weightMm).circle(mark.xMm, mark.yMm, mark.radiusMm).stroke(INK);
      return;
    case 'box': {
      pdf.save();
      if (mark.turnDegrees) {
        const origin: [number, number] = [mark.xMm + mark.widthMm / 2, mark.yMm + mark.heightMm / 2];
        pdf.rotate(mark.turnDegrees, { origin });
      }
      dashed(pdf, mark.dash).lineWidth(mark.weightMm).rect(mark.xMm, mark.yMm, mark.widthMm, mark.heightMm);
      if (mark.fill === undefined) pdf.stroke(INK);
      else pdf.fillAndStroke(mark.fill === 'ink' ? INK : '#ffffff', INK);
      pdf.restore();
      return;
    }
    case 'text': {
      pdf
        .font(mark.face)
        .fontSize(mark.sizeMm)
        .fillColor(mark.ink === 'white' ? '#ffffff' : INK);
      const width = pdf.widthOfString(mark.text);
      const x = mark.xMm - (mark.anchor === 'end' ? width : mark.anchor === 'middle' ? width / 2 : 0);
      pdf.text(mark.text, x, mark.yMm, { lineBreak: false, baseline: 'alphabetic' });
    }
  }
}

function dashed(pdf: PDFKit.PDFDocument, dash: readonly number[] | undefined): PDFKit.PDFDocument {
  if (dash === undefined) return pdf.undash();
  // pdfkit takes a list of lengths; its types know a single one only.
  return pdf.dash(dash as unknown as number, {});
}
