/** A workbook of so many plain rows with its texts in the shared table, by ECMA-376 part 1, 18; made with little memory. */
import { strToU8, zipSync } from 'fflate';

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELS = 'http://schemas.openxmlformats.org/package/2006/relationships';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const TYPES = 'http://schemas.openxmlformats.org/package/2006/content-types';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';

function rowOf(n: number): readonly string[] {
  const [lot, item] = [1 + (n % 97), 1 + Math.floor(n / 97)];
  return [
    `19${10 + (n % 80)}.${lot}.${item}`,
    `Cloth sample ${n}`,
    'Unknown maker',
    `c. ${1800 + (n % 100)}`,
    'dyed wool',
    `${20 + (n % 30)} x ${30 + (n % 40)} cm`,
    'Parish of Saint Osk',
    `Gift of the mill, ${1900 + (n % 90)}`,
  ];
}

export function longWorkbook(rows: number): Uint8Array<ArrayBuffer> {
  const shared = new Map<string, number>();
  const lines = [
    ['Object number', 'Title', 'Maker', 'Date', 'Medium', 'Dimensions', 'Lender', 'Credit line'],
    ...Array.from({ length: rows }, (_, n) => rowOf(n + 1)),
  ].map((cells, y) => {
    const written = cells.map((text, x) => {
      if (!shared.has(text)) shared.set(text, shared.size);
      return `<c r="${String.fromCharCode(65 + x)}${y + 1}" t="s"><v>${shared.get(text)}</v></c>`;
    });
    return `<row r="${y + 1}">${written.join('')}</row>`;
  });
  const texts = [...shared.keys()].map((text) => `<si><t>${text}</t></si>`).join('');
  const part = (name: string, type: string) =>
    `<Override PartName="/xl/${name}.xml" ContentType="${TYPE}.${type}+xml"/>`;
  const rel = (id: string, type: string, target: string) =>
    `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
  const parts: Record<string, string> = {
    '[Content_Types].xml': `<Types xmlns="${TYPES}"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>${part('workbook', 'sheet.main')}${part('worksheets/sheet1', 'worksheet')}${part('sharedStrings', 'sharedStrings')}</Types>`,
    '_rels/.rels': `<Relationships xmlns="${RELS}">${rel('r1', 'officeDocument', 'xl/workbook.xml')}</Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="Checklist" sheetId="1" r:id="r1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${RELS}">${rel('r1', 'worksheet', 'worksheets/sheet1.xml')}${rel('r2', 'sharedStrings', 'sharedStrings.xml')}</Relationships>`,
    'xl/sharedStrings.xml': `<sst xmlns="${MAIN}" uniqueCount="${shared.size}">${texts}</sst>`,
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${MAIN}"><sheetData>${lines.join('')}</sheetData></worksheet>`,
  };
  const bytes = Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(XML + text)]));
  return zipSync(bytes) as Uint8Array<ArrayBuffer>;
}
