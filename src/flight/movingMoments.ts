/** So far from the sums' own centre, in half windows, the sums are formed anew about the present one. */
const RECENTRED_BEYOND = 0.5;
/** Moments that a polynomial of third degree asks for, and products with the data. */
const MOMENTS = 7;
const PRODUCTS = 4;

/**
 * Sums of powers over a window that moves along dense samples: samples that enter are added and those that leave
 * taken off, about a centre that is renewed every quarter of a window, so that rounding does not gather. A step
 * costs a few samples rather than all in the window.
 */
export class MovingMoments {
  private readonly t: Float64Array;
  private readonly y: Float64Array;
  private readonly scale: number;
  private centre = Number.NaN;
  private y0 = Number.NaN;
  private from = 0;
  private to = 0;
  private readonly moments = new Float64Array(MOMENTS);
  private readonly products = new Float64Array(PRODUCTS);
  private readonly powers = new Float64Array(MOMENTS);

  /** @param halfWidth_s the unit in which times are counted */
  constructor(t: Float64Array, y: Float64Array, halfWidth_s: number) {
    this.t = t;
    this.y = y;
    this.scale = halfWidth_s;
  }

  /**
   * Writes Σ xᵏ for k up to 2·degree and Σ xᵏ(y − y0) for k up to the degree over samples from … to−1,
   * x = (t − at)/halfWidth, and returns y0. Windows may only move forward.
   */
  about(at: number, from: number, to: number, degree: number, sums: Float64Array, rhs: Float64Array): number {
    const { moments, products, powers } = this;
    if (!(Math.abs(at - this.centre) <= RECENTRED_BEYOND * this.scale) || from >= this.to) {
      this.centre = at;
      this.y0 = this.y[from]!;
      moments.fill(0);
      products.fill(0);
      for (let i = from; i < to; i++) this.add(i, 1);
    } else {
      for (let i = this.to; i < to; i++) this.add(i, 1);
      for (let i = this.from; i < from; i++) this.add(i, -1);
    }
    this.from = from;
    this.to = to;
    // Σ(u + s)ᵏ = Σ C(k, j) sᵏ⁻ʲ Σuʲ.
    const shift = (this.centre - at) / this.scale;
    powers[0] = 1;
    for (let k = 1; k <= 2 * degree; k++) powers[k] = powers[k - 1]! * shift;
    for (let k = 0; k <= 2 * degree; k++) {
      let choose = 1;
      let sum = 0;
      let product = 0;
      for (let j = 0; j <= k; j++) {
        sum += choose * powers[k - j]! * moments[j]!;
        if (k <= degree) product += choose * powers[k - j]! * products[j]!;
        choose = (choose * (k - j)) / (j + 1);
      }
      sums[k] = sum;
      if (k <= degree) rhs[k] = product;
    }
    return this.y0;
  }

  private add(i: number, sign: number): void {
    const { moments, products } = this;
    const u = (this.t[i]! - this.centre) / this.scale;
    const d = this.y[i]! - this.y0;
    const u2 = u * u;
    const u3 = u2 * u;
    moments[0]! += sign;
    moments[1]! += sign * u;
    moments[2]! += sign * u2;
    moments[3]! += sign * u3;
    moments[4]! += sign * u2 * u2;
    moments[5]! += sign * u2 * u3;
    moments[6]! += sign * u3 * u3;
    products[0]! += sign * d;
    products[1]! += sign * u * d;
    products[2]! += sign * u2 * d;
    products[3]! += sign * u3 * d;
  }
}
