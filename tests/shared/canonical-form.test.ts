/** What is signed, against what others published: the canonical text and its digest. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import { describe, expect, test } from 'vitest';

const FOLDER = join(import.meta.dirname, '..', 'reference', 'rfc8785');

function numberOfBits(hex: string): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${hex}`));
  return view.getFloat64(0);
}

describe('the canonical text', () => {
  test('reference: numbers, RFC 8785 appendix B', () => {
    const rows = readFileSync(join(FOLDER, 'numbers.csv'), 'utf8').trim().split('\n').slice(1);
    expect(rows).toHaveLength(24);
    for (const row of rows) {
      const [bits, canonical] = row.split(',') as [string, string];
      expect([bits, toCanonicalText([numberOfBits(bits)])]).toEqual([bits, `[${canonical}]`]);
    }
    for (const bits of ['7fffffffffffffff', '7ff0000000000000', 'fff0000000000000']) {
      expect(() => toCanonicalText([numberOfBits(bits)])).toThrow();
    }
  });

  test("reference: order, structures, escapes and unnormalised letters, the RFC's examples and its published test data", () => {
    const cases = JSON.parse(readFileSync(join(FOLDER, 'published.json'), 'utf8')) as {
      name: string;
      input: string;
      output: string;
    }[];
    expect(cases).toHaveLength(8);
    for (const { name, input, output } of cases) {
      expect([name, toCanonicalText(JSON.parse(input))]).toEqual([name, output]);
      // A canonical text is its own canonical text.
      expect(toCanonicalText(JSON.parse(output))).toBe(output);
    }
  });

  test('reference: the very bytes of RFC 8785 section 3.2.4', () => {
    const form = {
      numbers: [333333333.3333333, 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/',
      literals: [null, true, false],
    };
    const bytes =
      '7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e756d62657273223a5b3333333333333333332e333333333333' +
      '332c31652b33302c342e352c302e3030322c31652d32375d2c22737472696e67223a22e282ac245c75303030665c6e412742' +
      '5c225c5c5c5c5c222f227d';
    expect(Buffer.from(toCanonicalText(form), 'utf8').toString('hex')).toBe(bytes);
  });
});

describe('the digest', () => {
  test('reference: SHA-256, the examples of FIPS 180-4 and of the NIST secure hashing page (values from memory)', () => {
    const examples = [
      ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
      ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
      [
        'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
        '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
      ],
      [
        'abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu',
        'cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1',
      ],
      ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
    ] as const;
    for (const [text, digest] of examples) expect(digestOf(text)).toBe(digest);
  });
});
