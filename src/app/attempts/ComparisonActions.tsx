import type { Comparison } from '../../attempts/types.ts';
import { comparisonCsv } from '../../exchange/comparisonCsv.ts';
import { plainJson } from '../../exchange/plainJson.ts';
import { saveFile } from '../saveFile.ts';
import { unitSet } from '../units.ts';

/** The comparison on paper, as a report in one file, as a table and as its plain document. */
export function ComparisonActions({ comparison }: { readonly comparison: Comparison }) {
  const save = (ending: string, type: string, text: string) =>
    saveFile(`attempts.${ending}`, new Blob([text], { type: `${type};charset=utf-8` }));
  const kinds = [
    { label: 'Print', act: () => print() },
    {
      label: 'Save report',
      act: async () => {
        const { comparisonReport } = await import('../../exchange/report/comparisonReport.ts');
        save('html', 'text/html', comparisonReport(comparison, unitSet.value));
      },
    },
    { label: 'Save this table as CSV', act: () => save('csv', 'text/csv', comparisonCsv(comparison)) },
    { label: 'Save JSON', act: () => save('json', 'application/json', plainJson(comparison)) },
  ];
  return (
    <div class="comparison-actions">
      {kinds.map(({ label, act }) => (
        <button key={label} type="button" class="plain" onClick={() => void act()}>
          {label}
        </button>
      ))}
    </div>
  );
}
