/** What is to be packed: vectors[i * dimensions + k] is component k of stem i. */
export interface Unpacked {
  stems: string[];
  rarities: number[];
  mostRare: number;
  dimensions: number;
  vectors: Float64Array;
}

/**
 * The form in which assets/match/word-vectors.json ships them, read by lib/syllabus/match/word-vectors.ts: stems
 * parted by spaces, each one's rarity in 1/10, and each component of the unit vector in two bits, four to a byte.
 */
export function packed({
  stems,
  rarities,
  mostRare,
  dimensions,
  vectors,
}: Unpacked): Record<string, unknown> {
  const bytes = new Uint8Array((stems.length * dimensions) / 4);
  for (let i = 0; i < stems.length; i++) {
    const vector = vectors.subarray(i * dimensions, (i + 1) * dimensions);
    const spread = Math.sqrt(vector.reduce((sum, x) => sum + x * x, 0) / dimensions);
    vector.forEach((x, k) => (bytes[(i * dimensions + k) >> 2]! |= codeOf(x / spread) << (2 * (k % 4))));
  }
  return {
    source: 'Made from WordNet 3.0, (c) 2006 Princeton University; see assets/match/README.md',
    dimensions,
    mostRare: Number(mostRare.toFixed(1)),
    stems: stems.join(' '),
    rarities: Buffer.from(rarities.map((rarity) => Math.round(rarity * 10))).toString('base64'),
    vectors: Buffer.from(bytes).toString('base64'),
  };
}

/** Where the inner level ends, in standard deviations. Source: Max (1960), "Quantizing for minimum distortion". */
const EDGE = 0.9816;

const codeOf = (x: number): number => (x < -EDGE ? 0 : x < 0 ? 1 : x < EDGE ? 2 : 3);
