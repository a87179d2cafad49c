// CIEDE2000 (ISO/CIE 11664-6; Sharma, Wu, Dalal 2005) on WebAssembly's vectors: four pairs at once in f32, two in f64.
// AssemblyScript, compiled by build.mjs into src/kernel-bytes.ts. No angle is ever taken: a hue stays the unit vector it
// is, the mean hue is the bisector of two, ΔH comes from their cross and dot products, the cosines of 2h, 3h and 4h from
// the multiple-angle formulas, and R_T's bell and sine from short polynomials; src/differences.ts says the same in one
// lane, with the paper's numbers.

// Constants lie in the module's first page as vectors, f32 from 1024 and f64 from 2048 on: an engine makes a vector of a
// written constant anew in every round, from several instructions, where one of these is a single load.
const F32_CONSTANTS: usize = 1024;
const F64_CONSTANTS: usize = 2048;

const HALF = 0;
const ONE = 1;
const ONE_AND_HALF = 2;
const TWO = 3;
const THREE = 4;
const FOUR = 5;
const TWENTY = 6;
const FIFTY = 7;
const CHROMA_25_TO_7TH = 8;
const TINY = 9;
const SIGN_BIT = 10;
const T_COS = 11;
const T_SIN = 12;
const T_COS2 = 13;
const T_COS3 = 14;
const T_SIN3 = 15;
const T_COS4 = 16;
const T_SIN4 = 17;
const COS_275 = 18;
const MINUS_SIN_275 = 19;
const BELL_ENDS = 20;
const BELL = 21;
const SINE = 28;
const PER_LIGHTNESS = 33;
const PER_CHROMA = 34;
const LOWEST = 35;

function keep<T>(index: usize, value: f64): void {
  const from = sizeof<T>() === 4 ? F32_CONSTANTS : F64_CONSTANTS;
  v128.store(from + (index << 4), v128.splat<T>(value as T));
}

function keepAll<T>(): void {
  keep<T>(HALF, 0.5);
  keep<T>(ONE, 1);
  keep<T>(ONE_AND_HALF, 1.5);
  keep<T>(TWO, 2);
  keep<T>(THREE, 3);
  keep<T>(FOUR, 4);
  keep<T>(TWENTY, 20);
  keep<T>(FIFTY, 50);
  keep<T>(CHROMA_25_TO_7TH, 6103515625);
  keep<T>(TINY, 1e-30);
  keep<T>(SIGN_BIT, -0.0);
  keep<T>(T_COS, 0.14722431864335458);
  keep<T>(T_SIN, 0.085);
  keep<T>(T_COS2, 0.24);
  keep<T>(T_COS3, 0.3182470065178475);
  keep<T>(T_SIN3, 0.03344910824564911);
  keep<T>(T_COS4, 0.09079809994790938);
  keep<T>(T_SIN4, 0.17820130483767357);
  keep<T>(COS_275, 0.08715574274765817);
  keep<T>(MINUS_SIN_275, 0.9961946980917455);
  keep<T>(BELL_ENDS, 0.75);
  // Least squares over u from 0 to 0.75 and over the bell from 0 to 1; f32 has no use for the last degree.
  if (sizeof<T>() === 4) {
    keep<T>(BELL, 1.0000000000727942);
    keep<T>(BELL + 1, -1.3131225773235626);
    keep<T>(BELL + 2, 0.42444056684047865);
    keep<T>(BELL + 3, -0.036109485367436224);
    keep<T>(BELL + 4, -0.000660575985524226);
    keep<T>(BELL + 5, -0.0038863810711274346);
    keep<T>(SINE, 1.0471974080088267);
    keep<T>(SINE + 1, -0.19139485753605878);
    keep<T>(SINE + 2, 0.010487601094023913);
    keep<T>(SINE + 3, -0.000264763603768855);
  } else {
    keep<T>(BELL, 1.0000000000113465);
    keep<T>(BELL + 1, -1.3131225455062268);
    keep<T>(BELL + 2, 0.42443824254578416);
    keep<T>(BELL + 3, -0.03605430277925134);
    keep<T>(BELL + 4, -0.0011951065232488432);
    keep<T>(BELL + 5, -0.0017056873000261628);
    keep<T>(BELL + 6, -0.003078832126983143);
    keep<T>(SINE, 1.0471975507518705);
    keep<T>(SINE + 1, -0.1913967607766422);
    keep<T>(SINE + 2, 0.010494452760124201);
    keep<T>(SINE + 3, -0.0002738991585692666);
    keep<T>(SINE + 4, 0.000004060246577968802);
  }
  keep<T>(PER_LIGHTNESS, 0.015);
  keep<T>(PER_CHROMA, 0.045);
  keep<T>(LOWEST, 1e9);
}

keepAll<f32>();
keepAll<f64>();

function k<T>(index: usize): v128 {
  return sizeof<T>() === 4 ? v128.load(F32_CONSTANTS + (index << 4)) : v128.load(F64_CONSTANTS + (index << 4));
}

function zero<T>(): v128 {
  return v128.splat<T>(0 as T);
}

/** sum · by + plus. */
function then<T>(sum: v128, by: v128, plus: v128): v128 {
  return v128.add<T>(v128.mul<T>(sum, by), plus);
}

/** x · x + y · y. */
function squares<T>(x: v128, y: v128): v128 {
  return v128.add<T>(v128.mul<T>(x, x), v128.mul<T>(y, y));
}

function to7th<T>(x: v128): v128 {
  const x2 = v128.mul<T>(x, x);
  return v128.mul<T>(v128.mul<T>(v128.mul<T>(x2, x2), x2), x);
}

/**
 * For each paint (L, a, b, C) and work the share-weighted mean and the least ΔE00 of its swatches, and the share of
 * those under `near`. Works lie in planes L, a, b, C, share, each swatch after swatch of `stride` works; `stride` is a
 * whole number of vectors. Results are rows of `stride`, one a paint. C is hypot(a, b), made once a colour by the
 * caller. One body for both widths and written out in its loop: called as a function it took a seventh longer.
 */
function rows<T>(
  paints: usize,
  paintCount: i32,
  works: usize,
  swatches: i32,
  stride: i32,
  near: T,
  mean: usize,
  least: usize,
  within: usize,
): void {
  const row = (stride as usize) * sizeof<T>();
  const plane = row * (swatches as usize);
  const limit = v128.splat<T>(near);
  for (let p = 0; p < paintCount; p++) {
    const L1 = v128.load_splat<T>(paints);
    const a1 = v128.load_splat<T>(paints + sizeof<T>());
    const b1 = v128.load_splat<T>(paints + 2 * sizeof<T>());
    const C1 = v128.load_splat<T>(paints + 3 * sizeof<T>());
    for (let i: usize = 0; i < row; i += 16) {
      let sumOfAll = zero<T>();
      let lowest = k<T>(LOWEST);
      let share = zero<T>();
      let from = works + i;
      for (let j = 0; j < swatches; j++) {
        const L2 = v128.load(from);
        const a2 = v128.load(from + plane);
        const b2 = v128.load(from + plane * 2);
        const C2 = v128.load(from + plane * 3);

        // a stretched by 1 + G
        const mC7 = to7th<T>(v128.mul<T>(v128.add<T>(C1, C2), k<T>(HALF)));
        const fullness = v128.sqrt<T>(v128.div<T>(mC7, v128.add<T>(mC7, k<T>(CHROMA_25_TO_7TH))));
        const stretch = v128.sub<T>(k<T>(ONE_AND_HALF), v128.mul<T>(k<T>(HALF), fullness));
        const A1 = v128.mul<T>(a1, stretch);
        const A2 = v128.mul<T>(a2, stretch);
        const c1 = v128.sqrt<T>(squares<T>(A1, b1));
        const c2 = v128.sqrt<T>(squares<T>(A2, b2));

        // Exactly opposite hues have no sign of their own: the rule over [0°, 360°) gives them one.
        const product = v128.mul<T>(c1, c2);
        const dot = v128.add<T>(v128.mul<T>(A1, A2), v128.mul<T>(b1, b2));
        const cross = v128.mul<T>(stretch, v128.sub<T>(v128.mul<T>(a1, b2), v128.mul<T>(a2, b1)));
        const obtuse = v128.lt<T>(dot, zero<T>());
        const upper = v128.or(
          v128.gt<T>(b1, zero<T>()),
          v128.and(v128.eq<T>(b1, zero<T>()), v128.gt<T>(a1, zero<T>())),
        );
        const tied = v128.andnot(v128.and(k<T>(SIGN_BIT), v128.eq<T>(cross, zero<T>())), upper);
        const sign = v128.or(v128.and(cross, k<T>(SIGN_BIT)), tied);

        // The bisector of the hues is the sum of their vectors or, past a right angle, their difference turned by 90°; its
        // length is √(2 P K) with P = c1 c2 and K = P ± dot, and ΔH = 2 √P (cross or K) over the same length.
        const K = v128.add<T>(product, v128.abs<T>(dot));
        const scale = v128.div<T>(
          k<T>(ONE),
          v128.sqrt<T>(v128.pmax<T>(v128.mul<T>(v128.add<T>(product, product), K), k<T>(TINY))),
        );
        const across = v128.bitselect(v128.xor(K, sign), cross, obtuse);
        const deltaH = v128.mul<T>(v128.mul<T>(v128.mul<T>(k<T>(TWO), v128.sqrt<T>(product)), across), scale);
        const x1 = v128.mul<T>(A1, c2);
        const x2 = v128.mul<T>(A2, c1);
        const y1 = v128.mul<T>(b1, c2);
        const y2 = v128.mul<T>(b2, c1);
        const x = v128.bitselect(v128.xor(v128.sub<T>(y2, y1), sign), v128.add<T>(x1, x2), obtuse);
        const y = v128.bitselect(v128.xor(v128.sub<T>(x1, x2), sign), v128.add<T>(y1, y2), obtuse);
        const c = v128.mul<T>(x, scale);
        const s = v128.mul<T>(y, scale);

        // T
        const cc = v128.mul<T>(c, c);
        const cos2 = v128.sub<T>(v128.add<T>(cc, cc), k<T>(ONE));
        const sin2 = v128.mul<T>(v128.add<T>(s, s), c);
        const cc4 = v128.mul<T>(cc, k<T>(FOUR));
        const cos3 = v128.mul<T>(c, v128.sub<T>(cc4, k<T>(THREE)));
        const sin3 = v128.mul<T>(s, v128.sub<T>(cc4, k<T>(ONE)));
        const cos4 = v128.sub<T>(v128.mul<T>(v128.add<T>(cos2, cos2), cos2), k<T>(ONE));
        const sin4 = v128.mul<T>(v128.add<T>(sin2, sin2), cos2);
        const t1 = v128.sub<T>(k<T>(ONE), v128.add<T>(v128.mul<T>(k<T>(T_COS), c), v128.mul<T>(k<T>(T_SIN), s)));
        const t2 = v128.add<T>(v128.mul<T>(k<T>(T_COS2), cos2), v128.mul<T>(k<T>(T_COS3), cos3));
        const t3 = v128.add<T>(v128.mul<T>(k<T>(T_SIN3), sin3), v128.mul<T>(k<T>(T_COS4), cos4));
        const t = v128.sub<T>(v128.add<T>(t1, t2), v128.add<T>(t3, v128.mul<T>(k<T>(T_SIN4), sin4)));

        // R_T: u = sin²((h − 275°)/2), bell = q(u)^16, and nothing from 0° to 90°, whose way to 275° the formula does not wrap
        const away = v128.sub<T>(v128.mul<T>(k<T>(MINUS_SIN_275), s), v128.mul<T>(k<T>(COS_275), c));
        const u = v128.pmin<T>(then<T>(away, k<T>(HALF), k<T>(HALF)), k<T>(BELL_ENDS));
        let q = k<T>(BELL + 5);
        if (sizeof<T>() === 8) q = then<T>(k<T>(BELL + 6), u, q);
        q = then<T>(q, u, k<T>(BELL + 4));
        q = then<T>(q, u, k<T>(BELL + 3));
        q = then<T>(q, u, k<T>(BELL + 2));
        q = then<T>(q, u, k<T>(BELL + 1));
        q = then<T>(q, u, k<T>(BELL));
        q = v128.mul<T>(q, q);
        q = v128.mul<T>(q, q);
        q = v128.mul<T>(q, q);
        q = v128.mul<T>(q, q);
        // To 180° the bell is under 6e-7, which f32 can leave out with the rest.
        let unwrapped = v128.ge<T>(s, zero<T>());
        if (sizeof<T>() === 8) unwrapped = v128.and(unwrapped, v128.gt<T>(c, zero<T>()));
        q = v128.andnot(q, unwrapped);
        const qq = v128.mul<T>(q, q);
        let sine = k<T>(SINE + 3);
        if (sizeof<T>() === 8) sine = then<T>(k<T>(SINE + 4), qq, sine);
        sine = then<T>(sine, qq, k<T>(SINE + 2));
        sine = then<T>(sine, qq, k<T>(SINE + 1));
        sine = then<T>(sine, qq, k<T>(SINE));
        const sum = v128.add<T>(c1, c2);
        const mc = v128.mul<T>(sum, k<T>(HALF));
        const mc7 = to7th<T>(mc);
        const RC = v128.sqrt<T>(v128.div<T>(mc7, v128.add<T>(mc7, k<T>(CHROMA_25_TO_7TH))));
        const turn = v128.mul<T>(v128.mul<T>(sine, q), v128.add<T>(RC, RC));

        // S_L, S_C, S_H and the sum
        const l = v128.sub<T>(v128.mul<T>(v128.add<T>(L1, L2), k<T>(HALF)), k<T>(FIFTY));
        const ll = v128.mul<T>(l, l);
        const root = v128.sqrt<T>(v128.add<T>(ll, k<T>(TWENTY)));
        const SL = then<T>(k<T>(PER_LIGHTNESS), ll, root);
        const SC = then<T>(k<T>(PER_CHROMA), mc, k<T>(ONE));
        const SH = then<T>(v128.mul<T>(k<T>(PER_LIGHTNESS), mc), t, k<T>(ONE));
        const X = v128.div<T>(v128.mul<T>(v128.sub<T>(L2, L1), root), SL);
        const Y = v128.div<T>(v128.sub<T>(c2, c1), SC);
        const Z = v128.div<T>(deltaH, SH);
        const rest = v128.mul<T>(Z, v128.sub<T>(Z, v128.mul<T>(turn, Y)));
        const d = v128.sqrt<T>(v128.pmax<T>(v128.add<T>(squares<T>(X, Y), rest), zero<T>()));

        const weight = v128.load(from + plane * 4);
        sumOfAll = v128.add<T>(sumOfAll, v128.mul<T>(d, weight));
        lowest = v128.pmin<T>(lowest, d);
        share = v128.add<T>(share, v128.and(weight, v128.lt<T>(d, limit)));
        from += row;
      }
      v128.store(mean + i, sumOfAll);
      v128.store(least + i, lowest);
      v128.store(within + i, share);
    }
    paints += 4 * sizeof<T>();
    mean += row;
    least += row;
    within += row;
  }
}

export function rowsF32(
  paints: usize,
  paintCount: i32,
  works: usize,
  swatches: i32,
  stride: i32,
  near: f32,
  mean: usize,
  least: usize,
  within: usize,
): void {
  rows<f32>(paints, paintCount, works, swatches, stride, near, mean, least, within);
}

export function rowsF64(
  paints: usize,
  paintCount: i32,
  works: usize,
  swatches: i32,
  stride: i32,
  near: f64,
  mean: usize,
  least: usize,
  within: usize,
): void {
  rows<f64>(paints, paintCount, works, swatches, stride, near, mean, least, within);
}
