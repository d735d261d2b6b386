import { unbroken } from '../../exchange/sentence.ts';
import { inUnits } from '../units.ts';

/** Sentences under a heading; nothing where there are none. */
export function SaidList({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul class="plain-list">
        {lines.map((line) => (
          <li key={line}>{unbroken(inUnits(line))}</li>
        ))}
      </ul>
    </>
  );
}
