/**
 * Quantile of Student's distribution for a two-sided interval: the t that holds `confidence` of the probability between
 * −t and t with the given degrees of freedom (at least 1). Found from the regularized incomplete beta function (continued
 * fraction of Lentz) by bisection, to 1e-10.
 */
export function studentT(confidence: number, freedom: number): number {
  let low = 0;
  let high = 1;
  while (twoSided(high, freedom) < confidence && high < 1e8) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-10 * (1 + high); i++) {
    const middle = (low + high) / 2;
    if (twoSided(middle, freedom) < confidence) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Probability between −t and t. */
function twoSided(t: number, freedom: number): number {
  return 1 - incompleteBeta(freedom / (freedom + t * t), freedom / 2, 0.5);
}

function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(1 - x));
  return x < (a + 1) / (a + b + 2)
    ? (front * continuedFraction(x, a, b)) / a
    : 1 - (front * continuedFraction(1 - x, b, a)) / b;
}

function continuedFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const kept = (v: number) => (Math.abs(v) < tiny ? tiny : v);
  let c = 1;
  let d = 1 / kept(1 - ((a + b) * x) / (a + 1));
  let result = d;
  for (let m = 1; m <= 300; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / kept(1 + even * d);
    c = kept(1 + even / c);
    result *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / kept(1 + odd * d);
    c = kept(1 + odd / c);
    result *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return result;
}

/** Logarithm of the gamma function by the Lanczos approximation (g = 7), relative error below 1e-13 for positive values. */
function logGamma(z: number): number {
  const series = [
    676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
    -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
  ];
  if (z < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * z)) - logGamma(1 - z);
  const x = z - 1;
  const sum = series.reduce((s, c, i) => s + c / (x + i + 1), 0.9999999999998099);
  const t = x + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (x + 0.5) * Math.log(t) - t + Math.log(sum);
}
