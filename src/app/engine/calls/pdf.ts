/** The same sheets as one PDF file. The PDF writer and the fonts are fetched at the first one. */
import { fontBytes } from '../../paper/fonts.ts';
import { type BookQuestion, bookOf } from './book.ts';

export async function pdf(question: BookQuestion): Promise<Uint8Array> {
  const [{ sheetsToPdf }, fonts, book] = await Promise.all([
    import('../../../print/to-pdf.ts'),
    fontBytes(),
    bookOf(question),
  ]);
  const { siteName, date } = question.plan;
  return sheetsToPdf(book, fonts, { title: siteName, date });
}
