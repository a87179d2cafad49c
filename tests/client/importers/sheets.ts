/** Workbooks as people send them, made by a spreadsheet library or, for ODS, written as office programs write them. */
import * as XLSX from '@e965/xlsx';
import { strToU8, zipSync } from 'fflate';

/** Titles above, headings in two rows with a group merged over two of them, a hidden sheet, a number become a date. */
export function messyXlsx(): Uint8Array<ArrayBuffer> {
  const loans = XLSX.utils.aoa_to_sheet([
    ['Slow Water: loans, as of 3 May'],
    [],
    ['Accession No', 'Title', 'Dimensions', null, 'Insurance Value', 'Date'],
    [null, null, 'unframed', 'framed', null, null],
    ['1987.12.4', 'Weir panel', '40 x 60 cm', '45 x 65 cm', { t: 'n', v: 9000, z: '"£"#,##0' }, '1887'],
    [{ t: 'n', v: 32116, z: 'yyyy\\.m\\.d' }, 'Eel trap', '20 x 30 cm', null, null, null],
    ['1987.12.6', { t: 's', v: 'Mangle', f: 'UPPER("x")' }, '10 x 12 x 9 cm', null, { t: 'e', v: 0x17 }, null],
    ['Total', null, null, null, 9000, null],
  ]);
  const range = (top: number, left: number, bottom: number, right: number): XLSX.Range => {
    return { s: { r: top, c: left }, e: { r: bottom, c: right } };
  };
  loans['!merges'] = [range(0, 0, 0, 5), range(2, 0, 3, 0), range(2, 1, 3, 1), range(2, 2, 2, 3), range(2, 4, 3, 4)];
  const book = XLSX.utils.book_new();
  XLSX.utils.book_append_sheet(book, XLSX.utils.aoa_to_sheet([['About'], ['Nothing to see here']]), 'Notes');
  XLSX.utils.book_append_sheet(book, loans, 'Loans');
  const withdrawn = [
    ['Number', 'Title'],
    ['W.1', 'Withdrawn gear'],
  ];
  XLSX.utils.book_append_sheet(book, XLSX.utils.aoa_to_sheet(withdrawn), 'Withdrawn');
  book.Workbook = { Sheets: [{ Hidden: 0 }, { Hidden: 0 }, { Hidden: 1 }] };
  return new Uint8Array(XLSX.write(book, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer);
}

/** By OpenDocument 1.3, parts 3 and 9: titles, spans, repeats, a hidden table, a date, a formula with its value, a remark. */
export function messyOds(content = ODS_CONTENT): Uint8Array<ArrayBuffer> {
  return zipSync({
    mimetype: [strToU8('application/vnd.oasis.opendocument.spreadsheet'), { level: 0 }],
    'content.xml': strToU8(content),
  }) as Uint8Array<ArrayBuffer>;
}

export const ODS_CONTENT = `<?xml version="1.0" encoding="UTF-8"?>
<office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:dc="http://purl.org/dc/elements/1.1/" office:version="1.3">
<office:automatic-styles>
<style:style style:name="ta1" style:family="table"><style:table-properties table:display="true"/></style:style>
<style:style style:name="ta2" style:family="table"><style:table-properties table:display="false"/></style:style>
</office:automatic-styles>
<office:body><office:spreadsheet>
<table:table table:name="Maps &amp; marks" table:style-name="ta1">
<table:table-column table:number-columns-repeated="4"/>
<table:table-row><table:table-cell office:value-type="string" table:number-columns-spanned="4" table:number-rows-spanned="1"><text:p>River and flood maps</text:p></table:table-cell><table:covered-table-cell table:number-columns-repeated="3"/></table:table-row>
<table:table-row table:number-rows-repeated="2"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>
<table:table-row><table:table-cell office:value-type="string"><text:p>Object number</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Title</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Dimensions</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Lender</text:p></table:table-cell></table:table-row>
<table:table-row><table:table-cell office:value-type="string"><text:p>1902.7.1</text:p></table:table-cell><table:table-cell office:value-type="string"><office:annotation><dc:date>2026-01-02</dc:date><text:p>check the spelling</text:p></office:annotation><text:p>Flood <text:s text:c="2"/>of 1888</text:p><text:p>second line</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>40 x 60 cm</text:p></table:table-cell><table:table-cell office:value-type="string" table:number-columns-spanned="1" table:number-rows-spanned="2"><text:p>Parish of Saint Osk</text:p></table:table-cell></table:table-row>
<table:table-row><table:table-cell office:value-type="date" office:date-value="1902-07-02"><text:p>02.07.02</text:p></table:table-cell><table:table-cell table:formula="of:=[.B5]" office:value-type="string" office:string-value="Weir"><text:p>Weir</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>20 x 30 cm</text:p></table:table-cell><table:covered-table-cell/></table:table-row>
<table:table-row table:number-rows-repeated="1048570"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>
</table:table>
<table:table table:name="Old" table:style-name="ta2"><table:table-row><table:table-cell office:value-type="string"><text:p>Object number</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Title</text:p></table:table-cell></table:table-row><table:table-row><table:table-cell office:value-type="float" office:value="7"><text:p>7</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Old map</text:p></table:table-cell></table:table-row></table:table>
</office:spreadsheet></office:body></office:document-content>`;
