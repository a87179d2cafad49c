import { textEncodingOf } from '@enfilade/records/text-encoding';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const CHECKLIST = 'Object number;Title;Höhe\r\nOM 1\u00a0a;“Zoë” – Bücher, 12 €;30 × 40 cm\r\n';
const bytesOf = (text: string, encoding: 'utf8' | 'utf16le' | 'latin1') => new Uint8Array(Buffer.from(text, encoding));

function swapped(bytes: Uint8Array): Uint8Array {
  return bytes.map((_, at) => bytes[at % 2 === 0 ? at + 1 : at - 1] as number);
}

describe('how a checklist is written', () => {
  test('story: UTF-8, UTF-16 either way round and Windows-1252, with a byte order mark or without', () => {
    expect(textEncodingOf(bytesOf(CHECKLIST, 'utf8'))).toBe('utf-8');
    expect(textEncodingOf(bytesOf(`\ufeff${CHECKLIST}`, 'utf8'))).toBe('utf-8');
    for (const text of [CHECKLIST, `\ufeff${CHECKLIST}`]) {
      expect(textEncodingOf(bytesOf(text, 'utf16le'))).toBe('utf-16le');
      expect(textEncodingOf(swapped(bytesOf(text, 'utf16le')))).toBe('utf-16be');
    }
    expect(textEncodingOf(bytesOf('Zoë;Höhe;Bücher', 'latin1'))).toBe('windows-1252');
    // 0x80 is the euro sign in Windows-1252 and never begins a character of UTF-8.
    expect(textEncodingOf(Uint8Array.of(0x31, 0x80))).toBe('windows-1252');
    expect(textEncodingOf(new Uint8Array())).toBe('utf-8');
  });

  test('law: bytes are UTF-8 exactly where the platform’s strict decoder takes them', () => {
    const strict = new TextDecoder('utf-8', { fatal: true });
    const takes = (bytes: Uint8Array) => {
      try {
        strict.decode(bytes);
        return true;
      } catch {
        return false;
      }
    };
    const byte = fc.oneof(fc.integer({ min: 1, max: 255 }), fc.constantFrom(0xe0, 0xed, 0xf0, 0xf4, 0x80, 0xa0, 0xbf));
    fc.assert(
      fc.property(fc.array(byte, { maxLength: 6 }), (list) => {
        const bytes = Uint8Array.from(list);
        fc.pre(!(list[0] === 0xff && list[1] === 0xfe) && !(list[0] === 0xfe && list[1] === 0xff));
        expect(textEncodingOf(bytes) === 'utf-8').toBe(takes(bytes));
      }),
      { seed: 31, numRuns: 20_000 },
    );
  });

  test('law: any text of letters written in UTF-16 is found so', () => {
    const letters = fc.string({ unit: fc.constantFrom(...'abcdeéüß 0123456789;,\n“€'), minLength: 20, maxLength: 200 });
    fc.assert(
      fc.property(letters, (text) => {
        expect(textEncodingOf(bytesOf(`abc;def;ghi\n${text}`, 'utf16le'))).toBe('utf-16le');
      }),
      { seed: 37 },
    );
  });
});
