/**
 * Shapley values (Shapley 1953): what each of `count` changes contributes to the whole difference when they are
 * made in every order. They add up to value(all) − value(none) exactly.
 * @param value of a set of changes, given as a bit mask; called once a set
 */
export function shapley(count: number, value: (changed: number) => number): number[] {
  const values = Array.from({ length: 1 << count }, (_, set) => value(set));
  const factorial = (k: number): number => (k < 2 ? 1 : k * factorial(k - 1));
  return Array.from({ length: count }, (_, i) => {
    let sum = 0;
    for (let set = 0; set < 1 << count; set++) {
      if (set & (1 << i)) continue;
      const size = bits(set);
      const weight = (factorial(size) * factorial(count - size - 1)) / factorial(count);
      sum += weight * (values[set | (1 << i)]! - values[set]!);
    }
    return sum;
  });
}

function bits(set: number): number {
  let count = 0;
  for (let rest = set; rest > 0; rest >>= 1) count += rest & 1;
  return count;
}
