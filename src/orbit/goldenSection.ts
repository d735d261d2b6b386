/**
 * Place of the least value of a function with one minimum between two bounds, by golden sections (Kiefer 1953),
 * to `width`. The place is no better known than the root of the rounding in the function, its value is.
 */
export function goldenSection(f: (x: number) => number, from: number, to: number, width: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = from;
  let b = to;
  let left = b - ratio * (b - a);
  let right = a + ratio * (b - a);
  let atLeft = f(left);
  let atRight = f(right);
  while (b - a > width) {
    if (atLeft < atRight) {
      b = right;
      right = left;
      atRight = atLeft;
      left = b - ratio * (b - a);
      atLeft = f(left);
    } else {
      a = left;
      left = right;
      atLeft = atRight;
      right = a + ratio * (b - a);
      atRight = f(right);
    }
  }
  return 0.5 * (a + b);
}
