/**
 * Seeded random numbers with integer arithmetic only, so that every engine and machine draws the same sequence.
 * Algorithm: xoshiro128** (Blackman and Vigna, "Scrambled linear pseudorandom number generators", ACM TOMS 47, 2021),
 * seeded through splitmix32.
 */
export interface Random {
  /** Uniform in 0 … 2³²−1. */
  word(): number;
  /** Uniform in [0, 1), a multiple of 2⁻³². */
  unit(): number;
  /** Uniform whole number in 0 … limit−1. */
  below(limit: number): number;
  /** Near-normal with mean 0 and variance 1: the sum of twelve uniforms less six, exact in every engine. Range −6 … 6. */
  bell(): number;
}

export function createRandom(seed: number): Random {
  let mix = seed >>> 0;
  const next = () => {
    mix = (mix + 0x9e3779b9) >>> 0;
    let z = mix;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return (z ^ (z >>> 16)) >>> 0;
  };
  let a = next();
  let b = next();
  let c = next();
  let d = next() | 1;

  const word = () => {
    const scrambled = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = rotateLeft(d, 11);
    return scrambled;
  };
  const unit = () => word() / 0x1_0000_0000;
  return {
    word,
    unit,
    below: (limit) => Math.floor(unit() * limit),
    bell: () => {
      let sum = -6;
      for (let i = 0; i < 12; i++) sum += unit();
      return sum;
    },
  };
}

function rotateLeft(value: number, bits: number): number {
  return (value << bits) | (value >>> (32 - bits));
}

/** A seed for an independent stream: same parent and label, same child. */
export function childSeed(seed: number, label: number): number {
  let z = (seed ^ Math.imul(label + 1, 0x9e3779b1)) >>> 0;
  z = Math.imul(z ^ (z >>> 15), 0x2c1b3c6d);
  z = Math.imul(z ^ (z >>> 12), 0x297a2d39);
  return (z ^ (z >>> 15)) >>> 0;
}
