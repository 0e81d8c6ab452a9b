/**
 * Random bits from a seed, the same on every machine: xoshiro256** (D. Blackman, S. Vigna, Scrambled linear pseudorandom number
 * generators, ACM Trans. Math. Softw. 47 (2021) 36), seeded by SplitMix64 as its authors advise. Its period is 2^256 - 1.
 *
 * The 64-bit words are kept as halves, because big integers are some fifty times slower.
 */
export class Generator {
  /** Halves of the four words, the upper one first. */
  readonly #state: Int32Array;
  /** Upper and lower half of the last word drawn. */
  high = 0;
  low = 0;

  constructor(state: readonly bigint[]) {
    this.#state = Int32Array.from(state.flatMap((word) => [Number(word >> 32n), Number(word & 0xffffffffn)]));
  }

  /** @param seed - a whole number from 0 to 2^53 - 1. */
  static seeded(seed: number): Generator {
    return new Generator(splitMix(BigInt(seed), 4));
  }

  /** Draws the next word. */
  step(): void {
    const s = this.#state;
    const high1 = s[2]!;
    const low1 = s[3]!;
    // rotl(s1 * 5, 7) * 9, where a product is a shift and a sum: x * 5 = x + (x << 2).
    const low5 = (low1 + (low1 << 2)) | 0;
    const high5 = (high1 + ((high1 << 2) | (low1 >>> 30)) + carry(low5, low1)) | 0;
    const highTurned = (high5 << 7) | (low5 >>> 25);
    const lowTurned = (low5 << 7) | (high5 >>> 25);
    this.low = (lowTurned + (lowTurned << 3)) | 0;
    this.high = (highTurned + ((highTurned << 3) | (lowTurned >>> 29)) + carry(this.low, lowTurned)) | 0;
    const high2 = s[4]! ^ s[0]!;
    const low2 = s[5]! ^ s[1]!;
    const high3 = s[6]! ^ high1;
    const low3 = s[7]! ^ low1;
    s[2] = high1 ^ high2;
    s[3] = low1 ^ low2;
    s[0] = s[0]! ^ high3;
    s[1] = s[1]! ^ low3;
    s[4] = high2 ^ ((high1 << 17) | (low1 >>> 15));
    s[5] = low2 ^ (low1 << 17);
    // A turn by 45 is a swap of the halves and a turn by 13.
    s[6] = (low3 << 13) | (high3 >>> 19);
    s[7] = (high3 << 13) | (low3 >>> 19);
  }

  /** Evenly between 0 and 1, both excluded: the upper 52 bits, so that no draw rounds to an end. */
  uniform(): number {
    this.step();
    return ((this.high >>> 0) * 0x100000 + (this.low >>> 12) + 0.5) * 2 ** -52;
  }
}

/** Whether a sum of lower halves went past 32 bits. */
const carry = (sum: number, part: number): number => (sum >>> 0 < part >>> 0 ? 1 : 0);

/** The first words of SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, OOPSLA 2014), which spreads a seed over a state. */
export function splitMix(seed: bigint, count: number): bigint[] {
  let state = seed;
  return Array.from({ length: count }, () => {
    state = wrap(state + 0x9e3779b97f4a7c15n);
    let z = wrap((state ^ (state >> 30n)) * 0xbf58476d1ce4e5b9n);
    z = wrap((z ^ (z >> 27n)) * 0x94d049bb133111ebn);
    return z ^ (z >> 31n);
  });
}

const wrap = (word: bigint): bigint => BigInt.asUintN(64, word);
