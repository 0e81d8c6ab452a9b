/**
 * SHA-256 (FIPS 180-4) of bytes, in hexadecimal: the digits `sha256sum` prints, so that a report can be traced to its files.
 *
 * The browser's own is asynchronous, which would make reading a log asynchronous too.
 */
export function sha256(bytes: Uint8Array): string {
  const state = Uint32Array.from(firstPrimes(8), (prime) => fractionBits(Math.sqrt(prime)));
  const constants = Uint32Array.from(firstPrimes(64), (prime) => fractionBits(Math.cbrt(prime)));
  const schedule = new Uint32Array(64);
  const whole = bytes.length - (bytes.length % 64);
  for (let at = 0; at < whole; at += 64) compress(state, constants, schedule, bytes, at);
  const rest = bytes.length - whole;
  const tail = new Uint8Array(rest < 56 ? 64 : 128);
  tail.set(bytes.subarray(whole));
  tail[rest] = 0x80;
  const view = new DataView(tail.buffer);
  view.setUint32(tail.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(tail.length - 4, (bytes.length << 3) >>> 0);
  for (let at = 0; at < tail.length; at += 64) compress(state, constants, schedule, tail, at);
  return Array.from(state, (word) => word.toString(16).padStart(8, '0')).join('');
}

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let candidate = 2; primes.length < count; candidate++) {
    if (primes.every((prime) => candidate % prime !== 0)) primes.push(candidate);
  }
  return primes;
}

function fractionBits(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32);
}

function compress(state: Uint32Array, k: Uint32Array, w: Uint32Array, bytes: Uint8Array, at: number): void {
  for (let i = 0; i < 16; i++) {
    const b = at + 4 * i;
    w[i] = (bytes[b]! << 24) | (bytes[b + 1]! << 16) | (bytes[b + 2]! << 8) | bytes[b + 3]!;
  }
  for (let i = 16; i < 64; i++) {
    const x = w[i - 15]!;
    const y = w[i - 2]!;
    const s0 = ((x >>> 7) | (x << 25)) ^ ((x >>> 18) | (x << 14)) ^ (x >>> 3);
    const s1 = ((y >>> 17) | (y << 15)) ^ ((y >>> 19) | (y << 13)) ^ (y >>> 10);
    w[i] = (w[i - 16]! + s0 + w[i - 7]! + s1) | 0;
  }
  let a = state[0]!;
  let b = state[1]!;
  let c = state[2]!;
  let d = state[3]!;
  let e = state[4]!;
  let f = state[5]!;
  let g = state[6]!;
  let h = state[7]!;
  for (let i = 0; i < 64; i++) {
    const s1 = ((e >>> 6) | (e << 26)) ^ ((e >>> 11) | (e << 21)) ^ ((e >>> 25) | (e << 7));
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + k[i]! + w[i]!) | 0;
    const s0 = ((a >>> 2) | (a << 30)) ^ ((a >>> 13) | (a << 19)) ^ ((a >>> 22) | (a << 10));
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  state[0]! += a;
  state[1]! += b;
  state[2]! += c;
  state[3]! += d;
  state[4]! += e;
  state[5]! += f;
  state[6]! += g;
  state[7]! += h;
}
