import { decimal } from '../review/wording.ts';
import { pText } from './habitRelations.ts';
import { holm } from './holm.ts';
import { twoSampleTest } from './permutationTest.ts';
import type { GroupDifference } from './types.ts';

/** Below this two groups are said to differ. */
const CHANCE = 0.05;
/** Pairs of groups beyond this many are not tested: so many questions would find differences by chance. */
const MOST_PAIRS = 45;

/** Whether groups differ in their margin, pair by pair, by the permutation test. */
export function groupDifferences(
  groups: readonly { readonly name: string; readonly margins: readonly number[] }[],
): GroupDifference[] {
  const tested = groups.filter((g) => g.margins.length > 0);
  if ((tested.length * (tested.length - 1)) / 2 > MOST_PAIRS) return [];
  const pairs = tested.flatMap((a, i) =>
    tested.slice(i + 1).flatMap((b) => {
      const result = twoSampleTest(a.margins, b.margins);
      return result === null ? [] : [{ a, b, result }];
    }),
  );
  const corrected = holm(pairs.map(({ result }) => result.p));
  return pairs.map(({ a, b, result }, k): GroupDifference => {
    const { difference, p, exact, leastP } = result;
    const attempts = [a.margins.length, b.margins.length] as const;
    const correctedP = corrected[k] ?? 1;
    const text = sentence(a.name, b.name, attempts, difference, correctedP, leastP, pairs.length);
    return {
      groups: [a.name, b.name],
      attempts,
      difference_m_s: difference,
      p,
      correctedP,
      exact,
      leastP,
      text,
    };
  });
}

function sentence(
  a: string,
  b: string,
  sizes: readonly [number, number],
  difference: number,
  p: number,
  leastP: number,
  asked: number,
): string {
  const [better, worse] = difference >= 0 ? [a, b] : [b, a];
  const seen = `${better} has ${decimal(Math.abs(difference), 0)} m/s more margin on the mean than ${worse} (${sizes[0]} and ${sizes[1]} attempts, p ${pText(p)}${asked > 1 ? ` after correction for ${asked} pairs` : ''})`;
  if (leastP > CHANCE)
    return `${seen}; so few attempts could not show a difference beyond chance, whatever it is.`;
  if (p <= CHANCE) return `${seen}: beyond chance, if the attempts are independent.`;
  return `${seen}: not beyond chance, which does not say that there is none.`;
}
