import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sha256 } from '../../src/sweep/sha256.js';

const bytes = (text: string) => new TextEncoder().encode(text);

describe('the SHA-256 of a log', () => {
  // FIPS 180-4 examples as published by NIST (SHA256.pdf): one block, two blocks; the empty message is from memory.
  it.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of "%s" is the published one', (text, digest) => {
    expect(sha256(bytes(text))).toBe(digest);
  });

  it("agrees with Node's own for any bytes", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (data) => {
        expect(sha256(data)).toBe(createHash('sha256').update(data).digest('hex'));
      }),
    );
  });
});
