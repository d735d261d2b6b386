import { reviewJson } from '../../exchange/reviewJson.ts';
import type { Analysis } from '../../review/types.ts';
import { saveFile } from '../saveFile.ts';
import { unitSet } from '../units.ts';

/** The review on paper, as a report in one file, and as its plain document. */
export function ReviewActions({ analysis }: { readonly analysis: Analysis }) {
  const log = analysis.review.source.file.replace(/\.[^.]*$/u, '');
  const save = (ending: string, type: string, text: string) =>
    saveFile(`${log}-review.${ending}`, new Blob([text], { type: `${type};charset=utf-8` }));
  const saveReport = async () => {
    const { reportHtml } = await import('../../exchange/report/reportHtml.ts');
    save('html', 'text/html', reportHtml(analysis, unitSet.value));
  };
  return (
    <div class="review-actions">
      <button type="button" class="plain" onClick={() => print()}>
        Print
      </button>
      <button type="button" class="plain" onClick={() => void saveReport()}>
        Save report
      </button>
      <button
        type="button"
        class="plain"
        onClick={() => save('json', 'application/json', reviewJson(analysis.review))}
      >
        Save JSON
      </button>
    </div>
  );
}
